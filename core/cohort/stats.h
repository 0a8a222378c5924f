// The few statistics that a group's tables need. Numbers only.
// Checked against SciPy and statsmodels (tests/reference/cohort).
#pragma once

#include <cstdint>

namespace rehale::cohort {

struct Interval {
  double low = 0, high = 1;
};

// Wilson's score interval, 95 %, of a share k of n (0 <= k <= n). Exactly 0 at k = 0 and exactly 1
// at k = n; all of [0, 1] when n = 0.
[[nodiscard]] Interval wilson(std::int64_t k, std::int64_t n);

// Clopper and Pearson's exact interval, 95 %, for exports.
[[nodiscard]] Interval clopper_pearson(std::int64_t k, std::int64_t n);

// Exact McNemar test, two-sided: min(1, 2 P(X <= min(b, c))), X ~ Binomial(b + c, 1/2); 1 without
// any change.
[[nodiscard]] double mcnemar_exact(std::int64_t only_before, std::int64_t only_after);

// ln n!
[[nodiscard]] double log_factorial(std::int64_t n);

}  // namespace rehale::cohort
