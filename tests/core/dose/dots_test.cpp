// A dose as 100 dots (largest remainder: Hamilton's method, the definition is the check).
#include "core/dose/dots.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numeric>

#include "core/base/rng.h"

namespace {

using namespace rehale::dose;

int sum(const std::array<int, k_places>& dots) {
  return std::accumulate(dots.begin(), dots.end(), 0);
}

TEST(DoseDots, are_always_a_hundred_and_near_their_shares) {
  rehale::Rng rng(8);
  for (int n = 0; n < 20000; ++n) {
    std::array<double, k_places> f{};
    double all = 0;
    for (double& share : f) all += share = rng.below(4) == 0 ? 0 : rng.uniform();
    if (all == 0) continue;
    for (double& share : f) share /= all;
    const auto dots = hundred_dots({f[0], f[1], f[2], f[3], f[4]});
    ASSERT_EQ(sum(dots), 100);
    for (std::size_t i = 0; i < f.size(); ++i) ASSERT_LT(std::fabs(dots[i] - 100 * f[i]), 1);
  }
}

TEST(DoseDots, the_largest_remainders_get_what_is_left) {
  const std::array<int, k_places> wanted{10, 65, 4, 19, 2};
  EXPECT_EQ(hundred_dots({.100000, .651936, .035350, .192786, .019928}), wanted);
}

TEST(DoseDots, odd_shares_still_make_a_hundred) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(sum(hundred_dots({})), 100);
  EXPECT_EQ(sum(hundred_dots({nan, nan, nan, nan, nan})), 100);
  EXPECT_EQ(sum(hundred_dots({-1e-17, .5, .5, 0, 0})), 100);
  EXPECT_EQ(sum(hundred_dots({2, 2, 2, 2, 2})), 100);
}

}  // namespace
