#include "core/mastery/information.h"

#include <algorithm>
#include <cstddef>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

// The columns and the padding: piece.stride() numbers, so that the loops have fixed lengths and
// compilers unroll them. Choosing spends its time here.
template <std::size_t stride>
using Columns = std::array<double, stride>;

// P(column and all bits of `also`) for every column.
template <std::size_t stride>
inline Columns<stride> chances(const SupersetSums& sums, const Piece& piece, Bits also) {
  Columns<stride> found{};
  const double* lift = piece.lift.data();
  for (const Bits at : piece.at) {
    const double mass = sums.all_of(at | also);
    for (std::size_t c = 0; c < stride; ++c) found[c] += mass * lift[c];
    lift += stride;
  }
  return found;
}

// What an answer is to tell about, and what is known before it.
struct Told {
  const Model& model;
  const SupersetSums& sums;
  Bits about;
};

template <std::size_t stride>
void tell(const Told& told, const Piece& piece, Worth& found) {
  const auto& [model, sums, about] = told;
  const auto columns = static_cast<std::size_t>(piece.columns);
  const Columns<stride> chance = chances<stride>(sums, piece, 0);
  double all = 0;  // -H(X)
  for (std::size_t c = 0; c < columns; ++c) all += x_log_x(chance[c]);
  double given_state = 0;  // -H(X | state)
  for (std::size_t g = 0; g < piece.at.size(); ++g) {
    given_state += sums.all_of(piece.at[g]) * piece.lift_negentropy[g];
  }
  found.whole = std::max(found.whole, given_state - all);
  for (int index = 0; index < model.bits(); ++index) {
    const auto i = static_cast<std::size_t>(index);
    if (!(model.weight[i] > 0) || (about & bit(index)) == 0) continue;
    const Columns<stride> set = chances<stride>(sums, piece, bit(index));
    double joint = 0;  // -H(X, bit)
    for (std::size_t c = 0; c < columns; ++c) {
      joint += x_log_x(set[c]) + x_log_x(chance[c] - set[c]);
    }
    // I(X; bit) = H(bit) + H(X) - H(X, bit).
    found.about[i] = std::max(found.about[i], joint - all + sums.uncertainty(index));
  }
}

// JSD of the two conditional distributions at weights 1/2.
template <std::size_t stride>
double even_odds(const SupersetSums& sums, const Piece& piece, int index) {
  const double p = sums.marginal(index);
  const Columns<stride> chance = chances<stride>(sums, piece, 0);
  const Columns<stride> set = chances<stride>(sums, piece, bit(index));
  double told = 0;
  for (std::size_t c = 0; c < static_cast<std::size_t>(piece.columns); ++c) {
    const double with = set[c] / p;
    const double without = (chance[c] - set[c]) / (1 - p);
    told += (x_log_x(with) + x_log_x(without)) / 2 - x_log_x((with + without) / 2);
  }
  return std::max(0.0, told);
}

}  // namespace

Worth worth(const Model& model, const SupersetSums& sums, const Item& item, Bits about) {
  const Told told{model, sums, about};
  Worth found;
  for (const Piece& piece : item.pieces) {
    switch (piece.stride()) {
      case 2:
        tell<2>(told, piece, found);
        break;
      case 4:
        tell<4>(told, piece, found);
        break;
      case 6:
        tell<6>(told, piece, found);
        break;
      default:
        tell<k_max_columns>(told, piece, found);
        break;
    }
  }
  found.decision = k_whole_share * found.whole;
  for (std::size_t i = 0; i < found.about.size(); ++i) {
    found.decision += model.weight[i] * found.about[i];
  }
  return found;
}

double told_at_even_odds(const SupersetSums& sums, const Piece& piece, int index) {
  constexpr double k_certain = 1e-12;
  const double p = sums.marginal(index);
  if (p < k_certain || p > 1 - k_certain) return 0;
  switch (piece.stride()) {
    case 2:
      return even_odds<2>(sums, piece, index);
    case 4:
      return even_odds<4>(sums, piece, index);
    case 6:
      return even_odds<6>(sums, piece, index);
    default:
      return even_odds<k_max_columns>(sums, piece, index);
  }
}

}  // namespace rehale::mastery
