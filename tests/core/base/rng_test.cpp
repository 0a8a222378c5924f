// splitmix64 against the published first numbers for seed 1234567 (Rosetta Code, "Pseudo-random
// numbers/Splitmix64"); the rest are properties.
#include "core/base/rng.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <numeric>
#include <vector>

namespace {

using rehale::Rng;

TEST(Rng, gives_the_published_numbers) {
  Rng rng(1234567);
  for (const std::uint64_t wanted :
       {6457827717110365317ULL, 3203168211198807973ULL, 9817491932198370423ULL,
        4593380528125082431ULL, 16408922859458223821ULL}) {
    EXPECT_EQ(rng.next(), wanted);
  }
}

TEST(Rng, uniform_stays_in_its_range_and_fills_it) {
  Rng rng(3);
  std::array<int, 10> bins{};
  for (int i = 0; i < 100000; ++i) {
    const double u = rng.uniform();
    ASSERT_GE(u, 0);
    ASSERT_LT(u, 1);
    ++bins[static_cast<std::size_t>(u * 10)];
  }
  for (const int count : bins) EXPECT_NEAR(count, 10000, 500);  // five standard deviations
}

TEST(Rng, below_gives_each_value_equally_often) {
  Rng rng(4);
  std::array<int, 7> bins{};
  for (int i = 0; i < 70000; ++i) ++bins[static_cast<std::size_t>(rng.below(7))];
  for (const int count : bins) EXPECT_NEAR(count, 10000, 500);
  EXPECT_EQ(rng.below(1), 0U);
  EXPECT_EQ(rng.below(0), 0U);
}

TEST(Rng, shuffle_keeps_everything_and_reaches_every_order) {
  Rng rng(5);
  std::array<int, 6> seen{};  // the six orders of three
  for (int i = 0; i < 6000; ++i) {
    std::vector<int> list = {0, 1, 2};
    rehale::shuffle(list, rng);
    ++seen[static_cast<std::size_t>(list[0] * 2 + (list[1] > list[2] ? 1 : 0))];
    std::sort(list.begin(), list.end());
    ASSERT_EQ(list, (std::vector<int>{0, 1, 2}));
  }
  for (const int count : seen) EXPECT_NEAR(count, 1000, 150);
}

}  // namespace
