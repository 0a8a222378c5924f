// Properties of the posterior and its kernels; values against enumeration are in
// reference_test.cpp.
#include "core/mastery/posterior.h"

#include <gtest/gtest.h>

#include <numeric>
#include <vector>

#include "tests/core/mastery/made.h"

namespace {

using namespace rehale::mastery;
using rehale::Rng;
using rehale::tests::model_with;
using rehale::tests::sure;

std::vector<double> random_prior(int bits, Rng& rng) {
  std::vector<double> prior(std::size_t{1} << static_cast<unsigned>(bits));
  double sum = 0;
  for (double& mass : prior) sum += mass = rng.uniform();
  for (double& mass : prior) mass /= sum;
  return prior;
}

Piece random_piece(int bits, int touched, Rng& rng) {
  Bits mask = 0;
  while (std::popcount(mask) < touched) {
    mask |= bit(static_cast<int>(rng.below(static_cast<std::uint64_t>(bits))));
  }
  std::vector<double> rows(std::size_t{3} << static_cast<unsigned>(touched));
  for (double& chance : rows) chance = rng.uniform(.05, 1);
  return sure(make_piece(mask, 3, std::move(rows)));
}

// Every mask shape: bits among the lowest three, the middle six and the rest are read from other
// tables.
TEST(Posterior, update_is_bayes_rule_for_masks_anywhere) {
  Rng rng(21);
  for (const int bits : {3, 4, 9, 10, 12}) {
    for (int round = 0; round < 12; ++round) {
      const std::vector<double> prior = random_prior(bits, rng);
      Posterior posterior(model_with(std::min(bits, 12), prior));
      const Piece piece = random_piece(bits, std::min(bits, 1 + round % 6), rng);
      const double evidence = posterior.update(piece, round % 3);
      double sum = 0;
      std::vector<double> wanted;
      for (Bits state = 0; state < prior.size(); ++state) {
        int group = 0;
        while (piece.at[static_cast<std::size_t>(group)] != (state & piece.mask)) ++group;
        wanted.push_back(prior[state] * piece.chance(group, round % 3));
        sum += wanted.back();
      }
      ASSERT_NEAR(evidence, sum, 1e-14);
      for (Bits state = 0; state < prior.size(); ++state) {
        ASSERT_NEAR(posterior[state], wanted[state] / sum, 1e-15) << bits << " bits";
      }
    }
  }
}

TEST(Posterior, order_of_answers_does_not_matter) {
  Rng rng(22);
  const Model model = model_with(8, random_prior(8, rng));
  const Piece one = random_piece(8, 2, rng);
  const Piece two = random_piece(8, 3, rng);
  Posterior forth(model);
  Posterior back(model);
  forth.update(one, 0);
  forth.update(two, 1);
  back.update(two, 1);
  back.update(one, 0);
  for (Bits state = 0; state < 256; ++state) ASSERT_NEAR(forth[state], back[state], 1e-16);
}

// Ten techniques and three misconceptions, two of them against techniques high up: whole eights of
// states are ruled out.
Model model_with_dead_states() {
  const std::vector<TechniqueSpec> techniques(10);
  const std::vector<MisconceptionSpec> held = {
      {.rules_out = 1}, {.rules_out = 5}, {.rules_out = 8}};
  return sure(make_model(People{techniques, held}));
}

TEST(Posterior, several_pieces_at_once_are_the_same_one_by_one_to_the_bit) {
  Rng rng(25);
  const Model model = model_with_dead_states();
  Posterior at_once(model), one_by_one(model);
  EXPECT_LT(at_once.live().size(), model.states() / k_lanes);
  for (int round = 0; round < 20; ++round) {
    std::vector<Piece> pieces;
    std::vector<int> columns;
    const std::uint64_t count = 1 + rng.below(4);
    for (std::uint64_t n = 0; n < count; ++n) {
      pieces.push_back(random_piece(model.bits(), 1 + static_cast<int>(rng.below(4)), rng));
      columns.push_back(static_cast<int>(rng.below(4)) - 1);  // -1: it says nothing
    }
    at_once.update_each(pieces, columns);
    for (std::size_t n = 0; n < pieces.size(); ++n) {
      if (columns[n] >= 0 && columns[n] < pieces[n].columns)
        one_by_one.update(pieces[n], columns[n]);
    }
    for (Bits state = 0; state < model.states(); ++state)
      ASSERT_EQ(at_once[state], one_by_one[state]) << "round " << round << ", state " << state;
  }
}

TEST(Posterior, what_is_impossible_stays_impossible) {
  const std::vector<TechniqueSpec> techniques(3);
  const std::vector<MisconceptionSpec> held = {{.rules_out = 1}};
  const Model model = sure(make_model(People{techniques, held}));
  Posterior posterior(model);
  const Piece piece = sure(mark_piece(model, {.needs = 0b010, .misconception = 3}));
  for (int i = 0; i < 15; ++i) posterior.update(piece, k_missed);
  posterior.forget(1, .5);
  posterior.learn(1, .6, model.against(1));
  for (Bits state = 0; state < model.states(); ++state) {
    EXPECT_TRUE(model.feasible(state) || posterior[state] == 0) << state;
  }
}

TEST(Posterior, learning_takes_the_misconception_with_it_and_keeps_the_sum) {
  const std::vector<TechniqueSpec> techniques = {{.error_rate = .4}, {.error_rate = .3}};
  const std::vector<MisconceptionSpec> held = {{.rules_out = 0, .share = .5}};
  const Model model = sure(make_model(People{techniques, held}));
  Posterior posterior(model);
  posterior.learn(0, .6, model.against(0));
  SupersetSums sums;
  sums.sum(posterior.states());
  EXPECT_NEAR(sums.marginal(0), .6 + .4 * .6, 1e-14);
  EXPECT_NEAR(sums.marginal(2), .4 * .5 * .4, 1e-14);
  EXPECT_NEAR(sums.marginal(1), .7, 1e-14);
  EXPECT_NEAR(sums.all_of(0), 1, 1e-14);
}

TEST(Posterior, forgetting_all_and_learning_all_are_certain) {
  Rng rng(23);
  const Model model = model_with(4, random_prior(4, rng));
  Posterior posterior(model);
  SupersetSums sums;
  posterior.forget(2, 0);
  posterior.learn(1, 1);
  sums.sum(posterior.states());
  EXPECT_EQ(sums.marginal(2), 0);
  EXPECT_NEAR(sums.marginal(1), 1, 1e-15);
}

TEST(SupersetSums, within_a_few_bits_are_those_of_all_bits_to_the_bit) {
  Rng rng(26);
  const Model model = model_with_dead_states();
  Posterior posterior(model);
  for (int round = 0; round < 60; ++round) {
    const Piece piece = random_piece(model.bits(), 2, rng);
    posterior.update(piece, 0);
    if (round == 30) posterior.forget(5, .5);
    const Bits wanted = round == 0 ? 0 : static_cast<Bits>(rng.below(model.states()));
    SupersetSums all, within;
    all.sum(posterior.states());
    within.sum_within(posterior, wanted);
    for (Bits mask = 0; mask < model.states(); ++mask) {
      if ((mask & ~wanted) != 0) continue;
      ASSERT_EQ(within.all_of(mask), all.all_of(mask)) << wanted << ' ' << mask;
    }
    for (int index = 0; index < model.bits(); ++index) {
      if ((wanted & bit(index)) == 0) continue;
      ASSERT_EQ(within.uncertainty(index), all.uncertainty(index)) << wanted << ' ' << index;
    }
  }
}

TEST(SupersetSums, are_sums_over_supersets) {
  Rng rng(24);
  for (const int bits : {3, 4, 5, 6, 7, 10}) {
    const std::vector<double> prior = random_prior(bits, rng);
    SupersetSums sums;
    sums.sum(prior);
    for (Bits mask = 0; mask < prior.size(); ++mask) {
      double wanted = 0;
      for (Bits state = 0; state < prior.size(); ++state) {
        if ((state & mask) == mask) wanted += prior[state];
      }
      ASSERT_NEAR(sums.all_of(mask), wanted, 1e-14) << bits << " bits, mask " << mask;
    }
  }
}

TEST(SupersetSums, group_masses_come_back_by_moebius) {
  Rng rng(25);
  const std::vector<double> prior = random_prior(9, rng);
  const Piece piece = random_piece(9, 4, rng);
  SupersetSums sums;
  sums.sum(prior);
  const std::vector<double> masses = group_masses(sums, piece);
  for (std::size_t group = 0; group < masses.size(); ++group) {
    double wanted = 0;
    for (Bits state = 0; state < prior.size(); ++state) {
      if ((state & piece.mask) == piece.at[group]) wanted += prior[state];
    }
    EXPECT_NEAR(masses[group], wanted, 1e-14);
  }
}

}  // namespace
