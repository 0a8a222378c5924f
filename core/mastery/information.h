// How much a question would tell, in nats, before it is asked.
// Numbers only: must not know what was asked before or what may be asked.
#pragma once

#include <array>

#include "core/mastery/posterior.h"

namespace rehale::mastery {

inline constexpr double k_whole_share =
    .05;  // of the whole-state information in the decision index

// Of an item with several pieces these are the largest over its pieces: a true lower bound of what
// all of them together tell (I(X1..Xn; a) >= I(Xi; a)), so no item is ever overrated.
struct Worth {
  double decision = 0;  // J = sum w_k I(X;a_k) + sum v_b I(X;bug_b) + .05 I(X;state)
  double whole = 0;     // I(X; state)
  std::array<double, k_max_bits> about{};  // I(X; bit); 0 for bits of weight 0
};

// about: the bits to be told about; the index counts no others.
[[nodiscard]] Worth worth(const Model& model, const SupersetSums& sums, const Item& item,
                          Bits about = bit(k_max_bits) - 1);

// I(answer to the piece; bit) if the bit were as likely set as not and all else as it is now:
// how well the answer would tell the two apart, whatever the odds are. 0 when the bit is certain.
[[nodiscard]] double told_at_even_odds(const SupersetSums& sums, const Piece& piece, int index);

}  // namespace rehale::mastery
