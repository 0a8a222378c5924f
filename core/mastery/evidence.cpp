#include "core/mastery/evidence.h"

#include <array>
#include <bit>
#include <cstddef>
#include <string>
#include <utility>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

using Row = std::span<double>;

// Scales the row to sum 1, then lifts what is too small and takes it from the rest in proportion:
// with the least chance kept, the most follows. At most one more round a column.
void keep_in_bounds(Row row) {
  std::array<bool, k_max_columns> lifted{};
  for (std::size_t round = 0; round < row.size(); ++round) {
    double free = 0;
    double room = 1;
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (lifted[c]) room -= k_least_chance;
      else free += row[c];
    }
    bool again = false;
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (lifted[c]) continue;
      row[c] *= room / free;
      if (row[c] < k_least_chance) lifted[c] = again = true;
    }
    for (std::size_t c = 0; c < row.size(); ++c) {
      if (lifted[c]) row[c] = k_least_chance;
    }
    if (!again) return;
  }
}

// In place: sum over h ⊆ g of (-1)^|g∖h| row[h] for every row g of `width` numbers.
void lift_rows(std::vector<double>& rows, std::size_t width) {
  const std::size_t groups = rows.size() / width;
  for (std::size_t one = 1; one < groups; one *= 2) {
    for (std::size_t g = 0; g < groups; ++g) {
      if ((g & one) == 0) continue;
      for (std::size_t c = 0; c < width; ++c) rows[g * width + c] -= rows[(g ^ one) * width + c];
    }
  }
}

// With lifted rows, sum_g mass(g) row[g] = sum_g z[at g] lift[g]: no Möbius while choosing.
void add_lift(Piece& piece) {
  const auto columns = static_cast<std::size_t>(piece.columns);
  const auto stride = static_cast<std::size_t>(piece.stride());
  const auto groups = static_cast<std::size_t>(piece.groups);
  piece.lift.assign(groups * stride, 0);
  piece.lift_negentropy.assign(groups, 0);
  for (std::size_t g = 0; g < groups; ++g) {
    for (std::size_t c = 0; c < columns; ++c) {
      piece.lift[g * stride + c] = piece.rows[g * columns + c];
      piece.lift_negentropy[g] += x_log_x(piece.rows[g * columns + c]);
    }
  }
  lift_rows(piece.lift, stride);
  lift_rows(piece.lift_negentropy, 1);
}

void add_groups(Piece& piece) {
  piece.at.assign(static_cast<std::size_t>(piece.groups), 0);
  std::size_t place = 1;
  for (Bits left = piece.mask; left != 0; left &= left - 1, place *= 2) {
    const Bits lowest = left & (~left + 1);
    for (std::size_t g = 0; g < piece.at.size(); ++g) {
      if ((g & place) != 0) piece.at[g] |= lowest;
    }
  }
}

}  // namespace

double Piece::chance(int group, int column) const {
  const auto row = static_cast<std::size_t>(group) * static_cast<std::size_t>(columns);
  return rows[row + static_cast<std::size_t>(column)];
}

Bits Item::touches() const {
  Bits all = 0;
  for (const Piece& piece : pieces) all |= piece.mask;
  return all;
}

Result<Piece> make_piece(Bits mask, int columns, std::vector<double> rows, double flatten) {
  const int touched = std::popcount(mask);
  if (touched > k_max_group_bits || mask >= bit(k_max_bits) || columns < 2 ||
      columns > k_max_columns ||
      rows.size() !=
          (std::size_t{1} << static_cast<unsigned>(touched)) * static_cast<std::size_t>(columns)) {
    return fail("piece-size", "piece",
                std::to_string(touched) + " bits, " + std::to_string(columns) + " columns, " +
                    std::to_string(rows.size()) +
                    " entries; at most 6 bits, 2 to 8 columns, a row a group would be right");
  }
  Piece piece{mask, 1 << touched, columns, std::move(rows), {}, {}, {}};
  const auto width = static_cast<std::size_t>(columns);
  for (std::size_t start = 0; start < piece.rows.size(); start += width) {
    const Row row(piece.rows.data() + start, width);
    double sum = 0;
    bool fine = flatten >= 0 && flatten <= 1;
    for (const double chance : row) {
      fine = fine && chance >= 0 && chance <= 1e6;
      sum += chance;
    }
    if (!fine || !(sum > 0)) {
      return fail("piece-row", "group " + std::to_string(start / width),
                  "chances must not be negative nor all 0; flatten must lie in [0,1]");
    }
    for (double& chance : row) chance = (1 - flatten) * (chance / sum) + flatten / columns;
    keep_in_bounds(row);
  }
  add_groups(piece);
  add_lift(piece);
  return piece;
}

}  // namespace rehale::mastery
