// log and exp made of + * / and bit moves only: the same bits natively and in WASM, where the C
// library's own differ in the last place. Build with -ffp-contract=off.
// Must not know: who calls.
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>

namespace rehale {

namespace portable_math_detail {

inline constexpr double k_ln2 = 0x1.62e42fefa39efp-1;
// The same in two parts: the first has 32 bits, so k * first is exact for every exponent k.
inline constexpr double k_ln2_high = 0x1.62e42fee00000p-1;
inline constexpr double k_ln2_low = 0x1.a39ef35793c76p-33;

// An octave [0.7070, 1.4140) is cut into 128 cells of equal bit width; 1 lies on a border.
inline constexpr std::uint64_t k_octave_start = 0x3fe6a00000000000ULL;
inline constexpr unsigned k_cell_shift = 45;

struct Cell {
  double centre, inverse, log;
};

// ln c by 2 atanh((c-1)/(c+1)), summed from the small end: c in [0.7, 1.42), terms to s^25.
constexpr double log_by_series(double c) {
  const double s = (c - 1) / (c + 1);
  double sum = 0;
  for (int n = 25; n >= 1; n -= 2) sum = sum * (s * s) + 1.0 / n;
  return 2 * s * sum;
}

constexpr std::array<Cell, 128> make_cells() {
  std::array<Cell, 128> cells{};
  for (std::uint64_t i = 0; i < cells.size(); ++i) {
    const std::uint64_t start = k_octave_start + (i << k_cell_shift);
    double c = std::bit_cast<double>(start + (1ULL << (k_cell_shift - 1)));
    if (c > 1 - 1.0 / 256 && c < 1 + 1.0 / 128)
      c = 1;  // so that ln x is exact in proportion near 1
    cells[static_cast<std::size_t>(i)] = {c, 1 / c, log_by_series(c)};
  }
  return cells;
}

inline constexpr std::array<Cell, 128> k_cells = make_cells();

// 2^k for k in [-1022, 1023].
constexpr double power_of_two(int k) {
  return std::bit_cast<double>(static_cast<std::uint64_t>(k + 1023) << 52U);
}

// ln(1 + r) - r for |r| <= 1/128: what follows r^8 is below 2e-18 of the whole.
constexpr double log1p_tail(double r) {
  const double r2 = r * r;
  const double low = (-1.0 / 2 + r * (1.0 / 3)) + r2 * (-1.0 / 4 + r * (1.0 / 5));
  const double high = (-1.0 / 6 + r * (1.0 / 7)) + r2 * (-1.0 / 8);
  return r2 * (low + (r2 * r2) * high);
}

// x: positive, normal, finite.
constexpr double log_of_normal(double x) {
  const auto raw = std::bit_cast<std::uint64_t>(x);
  const std::uint64_t from_start = raw - k_octave_start;
  const auto exponent = static_cast<std::int64_t>(from_start) >> 52U;
  const double m = std::bit_cast<double>(raw - (static_cast<std::uint64_t>(exponent) << 52U));
  const Cell& cell = k_cells[static_cast<std::size_t>((from_start >> k_cell_shift) & 127U)];
  const double r = (m - cell.centre) * cell.inverse;  // the difference is exact
  const auto k = static_cast<double>(static_cast<std::int32_t>(exponent));
  return (k * k_ln2 + cell.log) + (r + log1p_tail(r));
}

}  // namespace portable_math_detail

// Natural logarithm, relative error below 1e-15 (what it is checked against: tests).
// 0 -> -infinity; negative or NaN -> NaN; +infinity stays.
[[nodiscard]] constexpr double portable_log(double x) {
  using namespace portable_math_detail;
  using Limits = std::numeric_limits<double>;
  if (x >= Limits::min() && x <= Limits::max()) return log_of_normal(x);
  if (x > 0) {
    if (x > Limits::max()) return x;
    return log_of_normal(x * 0x1p54) - 54 * k_ln2;  // subnormal
  }
  return x == 0 ? -Limits::infinity() : Limits::quiet_NaN();
}

// x log x; 0 at and below 0 (and below 2e-308): for masses that rounding may leave a hair under
// zero.
[[nodiscard]] constexpr double x_log_x(double x) {
  return x >= std::numeric_limits<double>::min() ? x * portable_math_detail::log_of_normal(x) : 0.0;
}

// e^x, relative error below 1e-15 where the result is normal; below -745.2 -> 0, above 709.78 ->
// infinity, NaN stays.
[[nodiscard]] constexpr double portable_exp(double x) {
  using namespace portable_math_detail;
  if (!(x < 709.782712893384)) {
    return x > 0 ? std::numeric_limits<double>::infinity() : x;
  }
  if (x < -745.2) return 0;
  const int k = static_cast<int>(x * 1.4426950408889634 + (x < 0 ? -.5 : .5));
  const double r = (x - k * k_ln2_high) - k * k_ln2_low;  // |r| <= .3466
  double sum = 0;
  for (int n = 13; n > 0; --n) sum = (sum + 1) * (r / n);  // Horner; .3466^14/14! < 5e-18
  const int half = k / 2;
  return (1 + sum) * power_of_two(half) * power_of_two(k - half);
}

}  // namespace rehale
