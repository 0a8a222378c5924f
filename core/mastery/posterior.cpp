#include "core/mastery/posterior.h"

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

constexpr std::size_t k_lanes = 8;
using Lanes = std::array<double, k_lanes>;

// Always in this order, so that every compiler rounds alike.
double total(const Lanes& sums) {
  return ((sums[0] + sums[1]) + (sums[2] + sums[3])) + ((sums[4] + sums[5]) + (sums[6] + sums[7]));
}

// The group of a state is read from three small tables: the lowest 3 bits run along the lanes, the
// next 6 and the rest pick a row of lanes.
struct GroupTables {
  std::array<Lanes, std::size_t{1} << k_max_group_bits> factors{};  // row -> one factor a lane
  std::array<std::uint8_t, 64> middle{};
  std::array<std::uint8_t, 128> upper{};
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

// One step over eight neighbours, at eight places `one` apart: the place's number is the three
// bits. Fixed lengths and no store before the last load of a lane, so that compilers use vectors at
// -O2 too.
void add_three_bits_of_eight(double* __restrict at, std::size_t one) {
  double* __restrict at1 = at + one;
  double* __restrict at2 = at + 2 * one;
  double* __restrict at3 = at + 3 * one;
  double* __restrict at4 = at + 4 * one;
  double* __restrict at5 = at + 5 * one;
  double* __restrict at6 = at + 6 * one;
  double* __restrict at7 = at + 7 * one;
  for (std::size_t i = 0; i < k_lanes; ++i) {
    const double s67 = at6[i] + at7[i];
    const double s57 = at5[i] + at7[i];
    const double s37 = at3[i] + at7[i];
    const double s4567 = (at4[i] + at5[i]) + s67;
    const double s2367 = (at2[i] + at3[i]) + s67;
    const double s1357 = (at1[i] + at3[i]) + s57;
    at[i] = ((at[i] + at1[i]) + (at2[i] + at3[i])) + s4567;
    at1[i] = s1357;
    at2[i] = s2367;
    at3[i] = s37;
    at4[i] = s4567;
    at5[i] = s57;
    at6[i] = s67;
  }
}

// Adds to every state without bit `one` (>= 8) the sum of the same state with it; then the same for
// the next two bits up. Three bits a pass: a third of the trips through memory.
void add_three_bits(double* sums, std::size_t states, std::size_t one) {
  for (std::size_t block = 0; block < states; block += 8 * one) {
    for (std::size_t i = block; i < block + one; i += k_lanes)
      add_three_bits_of_eight(sums + i, one);
  }
}

void add_one_bit_of_eight(const double* __restrict with, double* __restrict without) {
  for (std::size_t i = 0; i < k_lanes; ++i) without[i] += with[i];
}

void add_one_bit(double* sums, std::size_t states, std::size_t one) {
  for (std::size_t block = 0; block < states; block += 2 * one) {
    for (std::size_t i = block; i < block + one; i += k_lanes) {
      add_one_bit_of_eight(sums + i + one, sums + i);
    }
  }
}

// The lowest three bits of eight neighbours.
void add_within_eight(double* s) {
  for (std::size_t i = 0; i < 4; ++i) s[i] += s[i + 4];
  for (std::size_t i = 0; i < 2; ++i) {
    s[i] += s[i + 2];
    s[i + 4] += s[i + 6];
  }
  for (std::size_t i = 0; i < k_lanes; i += 2) s[i] += s[i + 1];
}

}  // namespace

Posterior::Posterior(const Model& model) : states_(model.prior) {}

double Posterior::update(const Piece& piece, int column) {
  const std::size_t count = states_.size();
  const GroupTables tables = tables_for(piece, column, count);
  Lanes sums{};
  for (std::size_t base = 0; base < count; base += k_lanes) {
    const std::size_t row = tables.middle[(base >> 3U) & 63U] | tables.upper[base >> 9U];
    const Lanes& factor = tables.factors[row];
    double* at = states_.data() + base;
    for (std::size_t lane = 0; lane < k_lanes; ++lane) {
      at[lane] *= factor[lane];
      sums[lane] += at[lane];
    }
  }
  const double evidence = total(sums);
  const double scale = 1 / evidence;
  for (std::size_t base = 0; base < count; base += k_lanes) {
    for (std::size_t lane = 0; lane < k_lanes; ++lane) states_[base + lane] *= scale;
  }
  return evidence;
}

void Posterior::forget(int technique, double kept) {
  const Bits mask = bit(technique);
  for (Bits state = 0; state < states_.size(); ++state) {
    if ((state & mask) == 0) continue;
    const double stays = states_[state] * kept;
    states_[state ^ mask] += states_[state] - stays;
    states_[state] = stays;
  }
}

void Posterior::learn(int technique, double learned, Bits against) {
  const Bits mask = bit(technique);
  for (Bits state = 0; state < states_.size(); ++state) {
    if ((state & mask) != 0) continue;
    const double moves = states_[state] * learned;
    states_[(state | mask) & ~against] += moves;
    states_[state] -= moves;
  }
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

void SupersetSums::sum(std::span<const double> states) {
  sums_.assign(states.begin(), states.end());
  for (std::size_t base = 0; base < sums_.size(); base += k_lanes) {
    add_within_eight(sums_.data() + base);
  }
  std::size_t one = k_lanes;
  for (; 4 * one < sums_.size(); one *= 8) add_three_bits(sums_.data(), sums_.size(), one);
  for (; one < sums_.size(); one *= 2) add_one_bit(sums_.data(), sums_.size(), one);
  for (int index = 0; bit(index) < sums_.size(); ++index) {
    const double p = marginal(index);
    uncertainty_[static_cast<std::size_t>(index)] = -(x_log_x(p) + x_log_x(1 - p));
  }
}

std::vector<double> group_masses(const SupersetSums& sums, const Piece& piece) {
  std::vector<double> masses;
  for (const Bits at : piece.at) masses.push_back(sums.all_of(at));
  for (std::size_t one = 1; one < masses.size(); one *= 2) {
    for (std::size_t group = 0; group < masses.size(); ++group) {
      if ((group & one) == 0) masses[group] -= masses[group | one];
    }
  }
  return masses;
}

}  // namespace rehale::mastery
