// The exact McNemar test of the simulations against facts/diagnosis.md 4.1: rows 3 (R mcnemar.test
// help; exact p by statsmodels and R binom.test) and 4 (scipy binomtest).
#include "tests/sim/mcnemar.h"

#include <gtest/gtest.h>

namespace {

using rehale::sim::mcnemar_exact;

TEST(McNemar, gives_the_published_p_values) {
  EXPECT_NEAR(mcnemar_exact(86, 150), 3.715936139571e-5, 1e-15);
  EXPECT_NEAR(mcnemar_exact(6, 16), .052478790283203125, 1e-12);
}

TEST(McNemar, is_one_without_a_difference) {
  EXPECT_EQ(mcnemar_exact(0, 0), 1);
  EXPECT_EQ(mcnemar_exact(4, 4), 1);
}

}  // namespace
