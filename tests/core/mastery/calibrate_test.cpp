// facts/diagnosis.md 1.6 (a): the data of Doignon & Falmagne 1999, ch. 7 (pks package), and the
// maximum likelihood estimates that the documentation of pks::blim publishes.
#include "core/mastery/calibrate.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <string>

#include "core/base/rng.h"

namespace {

using namespace rehale::mastery;

// Items a…e are bits 0…4, written in that order.
Bits pattern(const std::string& text) {
  Bits bits = 0;
  for (std::size_t i = 0; i < text.size(); ++i) bits |= text[i] == '1' ? Bits{1} << i : 0;
  return bits;
}

std::vector<PatternCount> doignon_falmagne() {
  const std::string text =
      "00000:80 10000:92 01000:89 00100:3 00010:2 00001:1 11000:89 10100:16 10010:18 10001:10 "
      "01100:18 01010:20 01001:4 00110:2 00101:2 00011:3 11100:89 11010:89 11001:19 10110:16 "
      "10101:16 10011:3 01110:18 01101:16 01011:2 00111:2 11110:73 11101:82 11011:19 10111:15 "
      "01111:15 11111:77 ";
  std::vector<PatternCount> counts;
  for (std::size_t at = 0; at < text.size(); at = text.find(' ', at) + 1) {
    counts.push_back({pattern(text.substr(at, 5)), std::atof(text.c_str() + at + 6)});
  }
  return counts;
}

struct Published : ::testing::Test {
  std::vector<Bits> states = {pattern("00000"), pattern("10000"), pattern("01000"),
                              pattern("11000"), pattern("11100"), pattern("11010"),
                              pattern("11110"), pattern("11101"), pattern("11111")};
  std::vector<Bits> needs = {1, 2, 4, 8, 16};
  std::vector<PatternCount> counts = doignon_falmagne();
  AnswerSheet sheet{states, needs, counts};
};

TEST_F(Published, the_data_are_a_thousand_people) {
  double people = 0;
  for (const PatternCount& seen : counts) people += seen.count;
  EXPECT_EQ(counts.size(), 32U);
  EXPECT_EQ(people, 1000);
}

TEST_F(Published, slip_and_guess_are_the_published_estimates) {
  // pks stops at this change (its default, from memory); two guesses still creep towards 0 then.
  const auto found = calibrate(sheet, {.tolerance = 1e-7});
  ASSERT_TRUE(found);
  EXPECT_TRUE(found->settled);
  const std::array<double, 5> slip = {.164871, .163113, .188839, .079835, .088648};
  const std::array<double, 5> guess = {.103065, .095074, .000004, .000003, .019910};
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(found->slip[i], slip[i], 2e-6);
    EXPECT_NEAR(found->guess[i], guess[i], 2e-6);
  }
}

// The facts sheet's own EM ([run] there), to its printed digits.
TEST_F(Published, likelihood_shares_and_posterior_are_those_of_another_program) {
  const auto found = calibrate(sheet);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->log_likelihood, -2908.557230, 1e-6);
  const std::array<double, 9> shares = {.061435, .097482, .091732, .067404, .133762,
                                        .114859, .134832, .141737, .156758};
  // States in the order of the facts: ∅ a b ab abc abd abcd abce abcde.
  for (std::size_t s = 0; s < 9; ++s) EXPECT_NEAR(found->shares[s], shares[s], 2e-6);
  const std::array<double, 9> given = {.006638, .085347, .087246, .519461, .194669,
                                       .070669, .015666, .018657, .001647};
  const std::vector<double> got = state_given(sheet, *found, pattern("11000"));
  for (std::size_t s = 0; s < 9; ++s) EXPECT_NEAR(got[s], given[s], 2e-6);
}

TEST(Calibrate, finds_again_what_made_up_answers_were_drawn_with) {
  const std::vector<Bits> states = {0, 1, 2, 3};
  const std::vector<Bits> needs = {1, 1, 2, 2, 3, 1, 2};
  const std::array<double, 7> slip = {.05, .10, .15, .08, .12, .2, .1};
  const std::array<double, 7> guess = {.20, .10, .15, .25, .05, .1, .2};
  std::vector<PatternCount> counts(128);
  rehale::Rng rng(8);
  for (int person = 0; person < 40000; ++person) {
    const Bits state = static_cast<Bits>(rng.below(4));
    Bits seen = 0;
    for (std::size_t i = 0; i < needs.size(); ++i) {
      const bool ready = (state & needs[i]) == needs[i];
      if (rng.uniform() < (ready ? 1 - slip[i] : guess[i])) seen |= Bits{1} << i;
    }
    counts[seen].pattern = seen;
    ++counts[seen].count;
  }
  const auto found = calibrate({states, needs, counts});
  ASSERT_TRUE(found);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    EXPECT_NEAR(found->slip[i], slip[i], .015) << i;  // standard errors are below .005
    EXPECT_NEAR(found->guess[i], guess[i], .015) << i;
  }
}

TEST(Calibrate, pseudo_counts_hold_estimates_back_when_few_answered) {
  const std::vector<Bits> states = {0, 1};
  const std::vector<Bits> needs = {1, 1, 1};
  const std::vector<PatternCount> counts = {{7, 3}, {0, 2}};
  const auto plain = calibrate({states, needs, counts});
  const auto held =
      calibrate({states, needs, counts}, {.slip_a = 2, .slip_b = 16, .guess_a = 3, .guess_b = 14});
  ASSERT_TRUE(plain && held);
  EXPECT_LT(plain->slip[0], .001);
  EXPECT_GT(held->slip[0], .04);   // (0 + 1) / (3 + 16)
  EXPECT_GT(held->guess[0], .10);  // (0 + 2) / (2 + 15)
}

TEST(Calibrate, says_what_is_missing_or_out_of_range) {
  const std::vector<Bits> states = {0, 1};
  const std::vector<Bits> needs = {1};
  const std::vector<PatternCount> none;
  EXPECT_EQ(calibrate({states, needs, none}).error().code, "calibrate-empty");
  const std::vector<PatternCount> beyond = {{2, 5}};
  EXPECT_EQ(calibrate({states, needs, beyond}).error().code, "calibrate-range");
}

}  // namespace
