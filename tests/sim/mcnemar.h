// Exact test for paired yes/no outcomes.
#pragma once

#include <algorithm>
#include <cmath>

namespace rehale::sim {

// Two-sided exact McNemar: min(1, 2 P(X <= min(b, c))), X ~ Binomial(b + c, 1/2); 1 when b + c = 0.
inline double mcnemar_exact(int only_first, int only_second) {
  const int n = only_first + only_second;
  const int least = std::min(only_first, only_second);
  if (n == 0) return 1;
  double sum = 0;
  for (int x = 0; x <= least; ++x) {
    sum += std::exp(std::lgamma(n + 1.0) - std::lgamma(x + 1.0) - std::lgamma(n - x + 1.0) -
                    n * std::log(2.0));
  }
  return std::min(1.0, 2 * sum);
}

}  // namespace rehale::sim
