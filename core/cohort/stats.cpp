#include "core/cohort/stats.h"

#include <algorithm>
#include <cmath>

#include "core/base/portable_math.h"

namespace rehale::cohort {

namespace {

constexpr double k_z = 1.959963984540054;  // of the normal distribution at .975

// P(X <= k), X ~ Binomial(n, p): from the term at k downwards, each a fraction of the one before.
double binomial_up_to(std::int64_t k, std::int64_t n, double p) {
  if (k >= n) return 1;
  if (k < 0) return 0;
  const double log_term = log_factorial(n) - log_factorial(k) - log_factorial(n - k) +
                          static_cast<double>(k) * portable_log(p) +
                          static_cast<double>(n - k) * portable_log(1 - p);
  double sum = 1, term = 1;
  for (std::int64_t i = k; i > 0 && term > 1e-18 * sum; --i) {
    term *= static_cast<double>(i) / static_cast<double>(n - i + 1) * ((1 - p) / p);
    sum += term;
  }
  return std::min(1.0, portable_exp(log_term + portable_log(sum)));
}

// The p at which P(X <= k) = .025; it falls as p grows.
double upper_end(std::int64_t k, std::int64_t n) {
  double low = 0, high = 1;
  for (int halving = 0; halving < 60; ++halving) {
    const double p = (low + high) / 2;
    if (binomial_up_to(k, n, p) > .025) low = p;
    else high = p;
  }
  return (low + high) / 2;
}

}  // namespace

double log_factorial(std::int64_t n) {
  constexpr double k_half_log_two_pi = .91893853320467274178;
  double shift = 0;
  for (; n < 16; ++n) shift += portable_log(static_cast<double>(n + 1));
  const auto x = static_cast<double>(n);
  const double r = 1 / (x * x);
  // Stirling's series (Abramowitz and Stegun 6.1.41); the next term is below 1e-13 / x.
  const double tail = (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r / 1680))) / x;
  return (x + .5) * portable_log(x) - x + k_half_log_two_pi + tail - shift;
}

Interval wilson(std::int64_t k, std::int64_t n) {
  if (n <= 0) return {};
  const auto count = static_cast<double>(n);
  const double p = static_cast<double>(k) / count;
  const double z2 = k_z * k_z / count;
  const double centre = p + z2 / 2;
  const double half = k_z * std::sqrt((p * (1 - p) + z2 / 4) / count);
  Interval interval{(centre - half) / (1 + z2), (centre + half) / (1 + z2)};
  if (k == 0) interval.low = 0;
  if (k == n) interval.high = 1;
  return interval;
}

Interval clopper_pearson(std::int64_t k, std::int64_t n) {
  if (n <= 0) return {};
  return {k == 0 ? 0 : 1 - upper_end(n - k, n), k == n ? 1 : upper_end(k, n)};
}

double mcnemar_exact(std::int64_t only_before, std::int64_t only_after) {
  const std::int64_t n = only_before + only_after;
  if (n == 0) return 1;
  return std::min(1.0, 2 * binomial_up_to(std::min(only_before, only_after), n, .5));
}

}  // namespace rehale::cohort
