#include "core/mastery/posterior.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

using Lanes = std::array<double, k_lanes>;

// Always in this order, so that every compiler rounds alike.
double total(const Lanes& sums) {
  return ((sums[0] + sums[1]) + (sums[2] + sums[3])) + ((sums[4] + sums[5]) + (sums[6] + sums[7]));
}

// The group of a state is read from three small tables: the lowest 3 bits run along the lanes, the
// next 6 and the rest pick a row of lanes.
struct GroupTables {
  // Not filled here: most is never used, and filling takes longer than the rest for few states.
  std::array<Lanes, std::size_t{1} << k_max_group_bits> factors;  // row -> one factor a lane
  std::array<std::uint8_t, 64> middle;
  std::array<std::uint8_t, 128> upper;
};

// Bits of `state` under `mask`, packed, the lowest first.
std::uint32_t packed(Bits state, Bits mask) {
  std::uint32_t group = 0;
  std::uint32_t place = 1;
  for (Bits left = mask; left != 0; left &= left - 1, place <<= 1U) {
    if ((state & (left & (~left + 1))) != 0) group |= place;
  }
  return group;
}

GroupTables tables_for(const Piece& piece, int column, std::size_t states) {
  GroupTables tables;
  const Bits lane_mask = piece.mask & 7U;
  const Bits row_mask = piece.mask & ~7U;
  const auto lane_bits = static_cast<unsigned>(std::popcount(lane_mask));
  const std::size_t rows = std::size_t{1} << static_cast<unsigned>(std::popcount(row_mask));
  for (std::size_t row = 0; row < rows; ++row) {
    for (Bits lane = 0; lane < k_lanes; ++lane) {
      const auto group = static_cast<int>((row << lane_bits) | packed(lane, lane_mask));
      tables.factors[row][lane] = piece.chance(group, column);
    }
  }
  for (Bits i = 0; i < tables.middle.size(); ++i) {
    tables.middle[i] = static_cast<std::uint8_t>(packed(i << 3U, row_mask));
  }
  for (Bits i = 0; (i << 9U) < states; ++i) {
    tables.upper[i] = static_cast<std::uint8_t>(packed(i << 9U, row_mask));
  }
  return tables;
}

template <bool scaled>
double multiply_blocks(std::span<const std::uint16_t> live, double* states,
                       const GroupTables& tables, double scale) {
  Lanes sums{};
  for (const std::size_t block : live) {
    const std::size_t row = tables.middle[block & 63U] | tables.upper[block >> 6U];
    const Lanes& factor = tables.factors[row];
    double* at = states + block * k_lanes;
    for (std::size_t lane = 0; lane < k_lanes; ++lane) {
      at[lane] = (scaled ? at[lane] * scale : at[lane]) * factor[lane];
      sums[lane] += at[lane];
    }
  }
  return total(sums);
}

}  // namespace

Posterior::Posterior(const Model& model) : states_(model.prior) { find_live(); }

// What is left out is 0 and stays 0: sums and products without it are the same to the bit.
void Posterior::find_live() {
  live_.clear();
  for (std::size_t block = 0; block < states_.size() / k_lanes; ++block) {
    const double* at = states_.data() + block * k_lanes;
    if (std::any_of(at, at + k_lanes, [](double mass) { return mass != 0; }))
      live_.push_back(static_cast<std::uint16_t>(block));
  }
}

// Scales what came before, then takes the piece in; returns the new sum over all states.
double Posterior::multiply(const Piece& piece, int column, double scale) {
  const GroupTables tables = tables_for(piece, column, states_.size());
  // By 1 nothing changes: a multiplication less for each state.
  return scale == 1 ? multiply_blocks<false>(live_, states_.data(), tables, 1)
                    : multiply_blocks<true>(live_, states_.data(), tables, scale);
}

void Posterior::scale_by(double scale) {
  for (const std::size_t block : live_) {
    double* at = states_.data() + block * k_lanes;
    for (std::size_t lane = 0; lane < k_lanes; ++lane) at[lane] *= scale;
  }
}

double Posterior::update(const Piece& piece, int column) {
  const double evidence = multiply(piece, column, 1);
  scale_by(1 / evidence);
  return evidence;
}

void Posterior::update_each(std::span<const Piece> pieces, std::span<const int> columns) {
  double scale = 1;
  for (std::size_t i = 0; i < pieces.size() && i < columns.size(); ++i) {
    if (columns[i] < 0 || columns[i] >= pieces[i].columns) continue;
    scale = 1 / multiply(pieces[i], columns[i], scale);
  }
  scale_by(scale);
}

void Posterior::forget(int technique, double kept) {
  const Bits mask = bit(technique);
  for (Bits state = 0; state < states_.size(); ++state) {
    if ((state & mask) == 0) continue;
    const double stays = states_[state] * kept;
    states_[state ^ mask] += states_[state] - stays;
    states_[state] = stays;
  }
  find_live();
}

void Posterior::learn(int technique, double learned, Bits against) {
  const Bits mask = bit(technique);
  for (Bits state = 0; state < states_.size(); ++state) {
    if ((state & mask) != 0) continue;
    const double moves = states_[state] * learned;
    states_[(state | mask) & ~against] += moves;
    states_[state] -= moves;
  }
  find_live();
}

Bits Posterior::most_likely() const {
  Bits best = 0;
  for (Bits state = 1; state < states_.size(); ++state) {
    if (states_[state] > states_[best]) best = state;
  }
  return best;
}

double Posterior::entropy() const {
  Lanes sums{};
  for (std::size_t base = 0; base < states_.size(); base += k_lanes) {
    for (std::size_t lane = 0; lane < k_lanes; ++lane) sums[lane] += x_log_x(states_[base + lane]);
  }
  return -total(sums);
}

}  // namespace rehale::mastery
