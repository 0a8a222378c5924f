#include "core/mastery/information.h"

#include <algorithm>
#include <cstddef>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

using Columns = std::array<double, k_max_columns + 1>;

// P(column and all bits of `also`) for every column; the last: that part of E[sum T ln T].
Columns chances(const SupersetSums& sums, const Piece& piece, Bits also) {
  Columns found{};
  const std::size_t width = static_cast<std::size_t>(piece.columns) + 1;
  const double* lift = piece.lift.data();
  for (const Bits at : piece.at) {
    const double mass = sums.all_of(at | also);
    for (std::size_t c = 0; c < width; ++c) found[c] += mass * lift[c];
    lift += width;
  }
  return found;
}

// sum of P ln P over the columns.
double negentropy(const Columns& chance, std::size_t columns) {
  double sum = 0;
  for (std::size_t c = 0; c < columns; ++c) sum += x_log_x(chance[c]);
  return sum;
}

// I(X; bit) = H(bit) + H(X) - H(X, bit).
double told_about(const SupersetSums& sums, const Piece& piece, const Columns& chance, int index) {
  const Columns set = chances(sums, piece, bit(index));
  const auto columns = static_cast<std::size_t>(piece.columns);
  double joint = 0;
  for (std::size_t c = 0; c < columns; ++c) {
    joint += x_log_x(set[c]) + x_log_x(chance[c] - set[c]);
  }
  return std::max(0.0, joint - negentropy(chance, columns) + sums.uncertainty(index));
}

}  // namespace

Worth worth(const Model& model, const SupersetSums& sums, const Item& item) {
  Worth found;
  for (const Piece& piece : item.pieces) {
    const auto columns = static_cast<std::size_t>(piece.columns);
    const Columns chance = chances(sums, piece, 0);
    found.whole = std::max(found.whole, chance[columns] - negentropy(chance, columns));
    for (int index = 0; index < model.bits(); ++index) {
      const auto i = static_cast<std::size_t>(index);
      if (!(model.weight[i] > 0)) continue;
      found.about[i] = std::max(found.about[i], told_about(sums, piece, chance, index));
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
  const Columns chance = chances(sums, piece, 0);
  const Columns set = chances(sums, piece, bit(index));
  double told = 0;
  for (std::size_t c = 0; c < static_cast<std::size_t>(piece.columns); ++c) {
    const double with = set[c] / p;
    const double without = (chance[c] - set[c]) / (1 - p);
    told += (x_log_x(with) + x_log_x(without)) / 2 - x_log_x((with + without) / 2);
  }
  return std::max(0.0, told);
}

}  // namespace rehale::mastery
