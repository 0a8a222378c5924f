#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "core/base/portable_math.h"
#include "core/mastery/posterior.h"

namespace rehale::mastery {
namespace {

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
void add_within_eight(const double* __restrict from, double* __restrict to) {
  const double s04 = from[0] + from[4];
  const double s15 = from[1] + from[5];
  const double s26 = from[2] + from[6];
  const double s37 = from[3] + from[7];
  const double s1357 = s15 + s37;
  const double s57 = from[5] + from[7];
  to[0] = (s04 + s26) + s1357;
  to[1] = s1357;
  to[2] = s26 + s37;
  to[3] = s37;
  to[4] = (from[4] + from[6]) + s57;
  to[5] = s57;
  to[6] = from[6] + from[7];
  to[7] = from[7];
}

// The bits of a number laid out under `mask`, the lowest first.
Bits spread(Bits number, Bits mask) {
  Bits found = 0;
  for (Bits left = mask; left != 0; left &= left - 1, number >>= 1U) {
    if ((number & 1U) != 0) found |= left & (~left + 1);
  }
  return found;
}

// What add_within_eight gives at the places within `low`, packed.
void fold_eight(const double* s, Bits low, double* to) {
  if (low == 0) {
    *to = ((s[0] + s[4]) + (s[2] + s[6])) + ((s[1] + s[5]) + (s[3] + s[7]));
    return;
  }
  std::array<double, k_lanes> eight;
  add_within_eight(s, eight.data());
  std::size_t n = 0;
  for (Bits place = 0; place < k_lanes; ++place) {
    if ((place & ~low) == 0) to[n++] = eight[place];
  }
}

// Adds up pairs of neighbours of `width` numbers; returns how many numbers are left.
std::size_t fold_pairs(double* at, std::size_t count, std::size_t width) {
  double* to = at;
  for (const double* from = at; from != at + count; from += 2 * width, to += width) {
    for (std::size_t i = 0; i < width; ++i) to[i] = from[i] + from[i + width];
  }
  return count / 2;
}

void add_pairs(double* at, std::size_t count, std::size_t width) {
  for (double* pair = at; pair != at + count; pair += 2 * width) {
    for (std::size_t i = 0; i < width; ++i) pair[i] += pair[i + width];
  }
}

}  // namespace

void SupersetSums::sum(std::span<const double> states) {
  sums_.resize(states.size());
  for (std::size_t base = 0; base < sums_.size(); base += k_lanes) {
    add_within_eight(states.data() + base, sums_.data() + base);
  }
  std::size_t one = k_lanes;
  for (; 4 * one < sums_.size(); one *= 8) add_three_bits(sums_.data(), sums_.size(), one);
  for (; one < sums_.size(); one *= 2) add_one_bit(sums_.data(), sums_.size(), one);
  tell_uncertainty(static_cast<Bits>(sums_.size() - 1));
}

// The additions of sum(), in its order: bit after bit. What nobody asks about is dropped on the
// way, so that half as much is left after most bits.
void SupersetSums::sum_within(const Posterior& posterior, Bits wanted) {
  const std::span<const double> states = posterior.states();
  const Bits low = wanted & (k_lanes - 1);
  std::size_t width = std::size_t{1} << static_cast<unsigned>(std::popcount(low));
  std::size_t count = states.size() / k_lanes * width;
  folded_.assign(count, 0);
  for (const std::size_t block : posterior.live())
    fold_eight(states.data() + block * k_lanes, low, folded_.data() + block * width);
  for (Bits one = k_lanes; one < states.size(); one *= 2) {
    if ((wanted & one) == 0) {
      count = fold_pairs(folded_.data(), count, width);
    } else {
      add_pairs(folded_.data(), count, width);
      width *= 2;
    }
  }
  sums_.resize(states.size());
  for (Bits n = 0; n < width; ++n) sums_[spread(n, wanted)] = folded_[n];
  tell_uncertainty(wanted);
}

void SupersetSums::tell_uncertainty(Bits wanted) {
  for (Bits left = wanted; left != 0; left &= left - 1) {
    const int index = std::countr_zero(left);
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
