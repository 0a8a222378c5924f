// Set cover against trying every choice of items.
#include "core/mastery/coverage.h"

#include <gtest/gtest.h>

#include <bit>
#include <vector>

#include "core/base/rng.h"

namespace {

using rehale::Rng;
using rehale::mastery::Bits;
using rehale::mastery::Cover;
using rehale::mastery::plan_cover;

// Fewest of the items that together bring every technique there; each counted alone (one item
// covers a technique or does not).
int by_trying(const std::vector<Bits>& covers, Bits wanted) {
  int best = 99;
  for (Bits pick = 0; pick < (Bits{1} << covers.size()); ++pick) {
    Bits got = 0;
    for (std::size_t i = 0; i < covers.size(); ++i) {
      if ((pick >> i & 1U) != 0) got |= covers[i];
    }
    if ((got & wanted) == wanted) best = std::min(best, std::popcount(pick));
  }
  return best;
}

TEST(PlanCover, is_the_fewest_and_names_the_steps_of_a_shortest_plan) {
  Rng rng(31);
  for (int round = 0; round < 300; ++round) {
    const std::size_t techniques = 1 + static_cast<std::size_t>(rng.below(5));
    const std::size_t items = 1 + static_cast<std::size_t>(rng.below(8));
    std::vector<double> offers(items * techniques);
    std::vector<Bits> covers(items, 0);
    Bits possible = 0;
    for (std::size_t i = 0; i < offers.size(); ++i) {
      offers[i] = rng.uniform() < .35 ? .06 : 0;
      if (offers[i] > 0) covers[i / techniques] |= Bits{1} << (i % techniques);
    }
    for (const Bits set : covers) possible |= set;
    const Cover cover = plan_cover(std::vector<double>(techniques, .05), offers);
    ASSERT_EQ(cover.fewest, by_trying(covers, possible));
    for (std::size_t i = 0; i < items; ++i) {
      const bool shortens = by_trying(covers, possible & ~covers[i]) < cover.fewest;
      ASSERT_EQ(cover.is_step[i], shortens) << "item " << i;
    }
  }
}

TEST(PlanCover, counts_several_items_where_one_is_too_little) {
  // Technique 0 needs two of .03; technique 1 is covered by item 2 alone.
  const Cover cover =
      plan_cover(std::vector<double>{.05, .05}, std::vector<double>{.03, 0, .03, 0, 0, .2, .01, 0});
  EXPECT_EQ(cover.fewest, 3);
  EXPECT_EQ(cover.is_step, (std::vector<bool>{true, true, true, false}));
}

TEST(PlanCover, leaves_out_what_nothing_can_cover) {
  const Cover cover = plan_cover(std::vector<double>{.05}, std::vector<double>{.01, .02});
  EXPECT_EQ(cover.fewest, 0);
  EXPECT_EQ(cover.is_step, (std::vector<bool>{false, false}));
}

}  // namespace
