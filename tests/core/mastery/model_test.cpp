// The prior: a mixture of two sorts of users that keeps the published rates (design.md
// "Diagnosis").
#include "core/mastery/model.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <vector>

#include "core/mastery/posterior.h"
#include "tests/core/mastery/made.h"

namespace {

using namespace rehale::mastery;
using rehale::tests::sure;

struct SmallFamily : ::testing::Test {
  std::vector<TechniqueSpec> techniques = {{true, 1, .46}, {false, .5, .07}, {true, .8, .75}};
  std::vector<MisconceptionSpec> misconceptions = {{0, .35, 1}, {2, .5, .5}};
  People people{techniques, misconceptions};
  Model model = sure(make_model(people));

  double share(Bits set, Bits clear = 0) const {
    double sum = 0;
    for (Bits state = 0; state < model.states(); ++state) {
      if ((state & set) == set && (state & clear) == 0) sum += model.prior[state];
    }
    return sum;
  }
};

TEST_F(SmallFamily, each_technique_is_lacking_at_its_published_rate) {
  for (int k = 0; k < 3; ++k) {
    const double rate = techniques[static_cast<std::size_t>(k)].error_rate;
    EXPECT_NEAR(share(0, bit(k)), rate, 1e-14);
  }
  EXPECT_NEAR(std::accumulate(model.prior.begin(), model.prior.end(), 0.0), 1, 1e-14);
}

TEST_F(SmallFamily, a_misconception_is_held_by_its_share_of_those_who_lack_and_by_no_other) {
  EXPECT_NEAR(share(bit(3)), .35 * .46, 1e-14);
  EXPECT_NEAR(share(bit(4)), .50 * .75, 1e-14);
  EXPECT_EQ(share(bit(0) | bit(3)), 0);
  EXPECT_EQ(share(bit(2) | bit(4)), 0);
  EXPECT_EQ(model.against(0), bit(3));
  EXPECT_EQ(model.against(1), 0U);
}

TEST_F(SmallFamily, having_one_technique_makes_another_likelier) {
  EXPECT_GT(share(bit(0) | bit(2)), share(bit(0)) * share(bit(2)) * 1.05);
}

TEST_F(SmallFamily, weights_are_those_of_the_index) {
  EXPECT_EQ(model.weight[0], 1);
  EXPECT_EQ(model.weight[1], 0);  // not critical
  EXPECT_EQ(model.weight[2], .8);
  EXPECT_EQ(model.weight[3], k_misconception_worth);
  EXPECT_EQ(model.weight[4], k_misconception_worth * .5);
}

TEST_F(SmallFamily, an_odds_factor_of_one_makes_techniques_independent) {
  model = sure(make_model(people, UserMix{.practised = .4, .odds_factor = 1}));
  EXPECT_NEAR(share(bit(0) | bit(2)), share(bit(0)) * share(bit(2)), 1e-14);
}

TEST(ClassRates, have_odds_the_factor_squared_apart_and_the_right_mean) {
  for (const double error : {.01, .2, .5, .9, .99}) {
    const ClassRates rates = class_rates(error, {.practised = .3, .odds_factor = 4});
    EXPECT_NEAR(.3 * rates.practised + .7 * rates.fresh, 1 - error, 1e-15);
    const double odds = rates.practised / (1 - rates.practised) * (1 - rates.fresh) / rates.fresh;
    EXPECT_NEAR(odds, 16, 1e-9);
  }
}

TEST_F(SmallFamily, what_cannot_be_is_said) {
  techniques[1].error_rate = 0;
  EXPECT_EQ(make_model(people).error().code, "mastery-range");
  techniques[1].error_rate = .1;
  misconceptions[0].rules_out = 3;
  EXPECT_EQ(make_model(people).error().code, "mastery-range");
  misconceptions[0].rules_out = 0;
  EXPECT_EQ(make_model(people, UserMix{.practised = 1}).error().code, "mastery-range");
  const std::vector<TechniqueSpec> many(13);
  EXPECT_EQ(make_model(People{many, {}}).error().code, "mastery-size");
  const std::vector<TechniqueSpec> two(2);
  EXPECT_EQ(make_model(People{two, {}}).error().code, "mastery-size");
}

TEST_F(SmallFamily, a_given_prior_must_be_one) {
  std::vector<double> prior = model.prior;
  EXPECT_TRUE(make_model(people, prior));
  prior[bit(0) | bit(3)] = 1e-9;
  EXPECT_EQ(make_model(people, prior).error().code, "mastery-prior");
  prior = model.prior;
  prior[0] += .01;
  EXPECT_EQ(make_model(people, prior).error().code, "mastery-prior");
  prior.pop_back();
  EXPECT_EQ(make_model(people, prior).error().code, "mastery-prior");
}

}  // namespace
