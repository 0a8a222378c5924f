// Can this bank tell all states apart at all, whatever is answered? (facts/diagnosis.md 1.4)
// Numbers only.
#pragma once

#include <cstddef>
#include <span>

#include "core/mastery/evidence.h"

namespace rehale::mastery {

// Distinct ideal right/wrong vectors over all 2^bits states (noisy AND). 2^bits: all told apart.
[[nodiscard]] std::size_t told_apart(std::span<const Bits> needs, int bits);

// The same over feasible states, by full response tables: two states are one when every column of
// every piece is equally likely in both.
[[nodiscard]] std::size_t told_apart(const Bank& bank);
[[nodiscard]] std::size_t feasible_states(const Model& model);

// Gu & Xu 2019 (arXiv 1711.03174): all three, and slip, guess and shares can be estimated (DINA).
struct Estimable {
  bool alone = false;     // each bit has an item that needs it alone
  bool thrice = false;    // each bit is needed by at least three items
  bool distinct = false;  // without one item alone for each bit, no two bits are needed alike
  [[nodiscard]] bool all() const { return alone && thrice && distinct; }
};
[[nodiscard]] Estimable estimable(std::span<const Bits> needs, int bits);

}  // namespace rehale::mastery
