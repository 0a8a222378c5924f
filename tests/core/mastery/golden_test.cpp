// The golden numbers of facts/diagnosis.md 1.6: (b) the exact rational example, (d) the retention
// kernel on it, (e) knowledge tracing by the same kernels. (a) is in calibrate_test.cpp.
#include <gtest/gtest.h>

#include <array>
#include <utility>

#include "core/mastery/information.h"
#include "tests/core/mastery/indices.h"
#include "tests/core/mastery/made.h"

namespace {

using namespace rehale::mastery;
using rehale::tests::right_wrong;
using rehale::tests::uniform_model;

// q = {1}, {1,2}, {2,3}, {3}; s = .10 .15 .05 .20; g = .20 .10 .25 .15; column 0 is right.
struct RationalExample : ::testing::Test {
  Model model = uniform_model(3);
  std::array<Piece, 4> items = {right_wrong(0b001, .10, .20), right_wrong(0b011, .15, .10),
                                right_wrong(0b110, .05, .25), right_wrong(0b100, .20, .15)};
  Posterior posterior{model};
  double evidence = 1;

  void SetUp() override {
    evidence *= posterior.update(items[0], 0);
    evidence *= posterior.update(items[1], 1);
  }
};

TEST_F(RationalExample, posterior_and_evidence_are_the_fractions) {
  EXPECT_NEAR(evidence, 261.0 / 800, 1e-15);
  const std::array<double, 8> wanted = {2.0 / 29, 9.0 / 29, 2.0 / 29, 3.0 / 58,
                                        2.0 / 29, 9.0 / 29, 2.0 / 29, 3.0 / 58};
  for (Bits state = 0; state < 8; ++state) EXPECT_NEAR(posterior[state], wanted[state], 1e-15);
  EXPECT_NEAR(posterior.entropy(), 1.770343583060405, 1e-14);
  EXPECT_EQ(posterior.most_likely(), 1U);
}

TEST_F(RationalExample, marginals_are_the_fractions) {
  SupersetSums sums;
  sums.sum(posterior.states());
  EXPECT_NEAR(sums.marginal(0), 21.0 / 29, 1e-15);
  EXPECT_NEAR(sums.marginal(1), 7.0 / 29, 1e-15);
  EXPECT_NEAR(sums.marginal(2), 1.0 / 2, 1e-15);
}

TEST_F(RationalExample, indices_are_those_of_the_table) {
  const std::array<Indices, 4> wanted = {{
      {.7068965517, .2314601615, 1.5388834215, .3160622077, .5010961084, .0978834721},
      {.1775862069, .1325313046, 1.6378122784, .1446803696, .2734979780, .0521700357},
      {.3344827586, .1188820721, 1.6514615110, .2048450291, .3003443852, .0520005945},
      {.4750000000, .2303409035, 1.5400026795, .4893923352, .5071455052, .1056250000},
  }};
  SupersetSums sums;
  sums.sum(posterior.states());
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Indices got = brute_indices(posterior.states(), items[i]);
    EXPECT_NEAR(got.right, wanted[i].right, 6e-11);
    EXPECT_NEAR(got.mi, wanted[i].mi, 6e-11);
    EXPECT_NEAR(got.she, wanted[i].she, 6e-11);
    EXPECT_NEAR(got.pwkl, wanted[i].pwkl, 6e-11);
    EXPECT_NEAR(got.mpwkl, wanted[i].mpwkl, 6e-11);
    EXPECT_NEAR(got.gdi, wanted[i].gdi, 6e-11);
    Item item;
    item.pieces.push_back(items[i]);
    EXPECT_NEAR(worth(model, sums, item).whole, wanted[i].mi, 6e-11) << "by superset sums";
  }
}

TEST_F(RationalExample, retention_kernel_moves_the_mass_of_the_table) {
  posterior.forget(0, .9);
  posterior.forget(1, .8);
  posterior.forget(2, .95);
  const std::array<double, 8> wanted = {.1205689655, .3030517241, .0622758621, .0391034483,
                                        .1090862069, .2741896552, .0563448276, .0353793103};
  for (Bits state = 0; state < 8; ++state) EXPECT_NEAR(posterior[state], wanted[state], 6e-11);
  SupersetSums sums;
  sums.sum(posterior.states());
  EXPECT_NEAR(sums.marginal(0), .6517241379, 6e-11);
  EXPECT_NEAR(sums.marginal(1), .1931034483, 6e-11);
  EXPECT_NEAR(sums.marginal(2), .475, 1e-14);
}

TEST(KnowledgeTracing, is_evidence_and_the_learning_kernel) {
  // P(L0) = .4, T = .15, S = .1, G = .2, answers 1 0 1 1; bits 1 and 2 stand idle at .5.
  std::vector<double> prior(8);
  for (Bits state = 0; state < 8; ++state) prior[state] = ((state & 1U) != 0 ? .4 : .6) / 4;
  const Model model = rehale::tests::model_with(3, std::move(prior));
  const Piece item = right_wrong(0b001, .1, .2);
  Posterior posterior(model);
  SupersetSums sums;
  const std::array<int, 4> answers = {0, 1, 0, 0};  // column 0 is right
  const std::array<double, 4> after = {.75, .3165829146, .7645141577, .9473176276};
  const std::array<double, 4> next = {.7875, .4190954774, .7998370340, .9552199835};
  for (std::size_t i = 0; i < answers.size(); ++i) {
    posterior.update(item, answers[i]);
    sums.sum(posterior.states());
    EXPECT_NEAR(sums.marginal(0), after[i], 6e-11);
    posterior.learn(0, .15);
    sums.sum(posterior.states());
    EXPECT_NEAR(sums.marginal(0), next[i], 6e-11);
  }
}

}  // namespace
