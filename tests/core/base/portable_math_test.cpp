// log and exp against 60-digit values (tests/reference/portable_math, Python's decimal and numpy)
// and against the C library.
#include "core/base/portable_math.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <string>

#include "core/base/rng.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using rehale::portable_exp;
using rehale::portable_log;
using rehale::x_log_x;

static_assert(portable_log(1.0) == 0.0, "usable while compiling");

constexpr double k_infinity = std::numeric_limits<double>::infinity();

double off_by(double got, double wanted) {
  return wanted == 0 ? std::fabs(got) : std::fabs(got - wanted) / std::fabs(wanted);
}

TEST(PortableMath, log_and_exp_are_within_1e_15_of_sixty_digit_values) {
  const auto text = rehale::support::read_file(
      rehale::support::source_path("tests/reference/portable_math/values.txt"));
  ASSERT_TRUE(text);
  const char* at = text->c_str();
  int lines = 0;
  while (*at != 0) {
    const bool is_log = at[0] == 'l';
    char* end = nullptr;
    const double x = std::strtod(at + (is_log ? 3 : 4), &end);
    const double wanted = std::strtod(end, &end);
    const double got = is_log ? portable_log(x) : portable_exp(x);
    EXPECT_LE(off_by(got, wanted), 1e-15) << (is_log ? "ln " : "exp ") << x;
    at = end + 1;
    ++lines;
  }
  EXPECT_EQ(lines, 322);
}

TEST(PortableMath, log_agrees_with_the_c_library_everywhere) {
  rehale::Rng rng(11);
  for (int i = 0; i < 200000; ++i) {
    const double x = std::ldexp(rng.uniform(.5, 1), static_cast<int>(rng.below(120)) - 60);
    ASSERT_LE(off_by(portable_log(x), std::log(x)), 1e-15) << x;
    const double near_one = rng.uniform(.98, 1.02);
    ASSERT_LE(off_by(portable_log(near_one), std::log(near_one)), 1e-15) << near_one;
  }
}

TEST(PortableMath, log_grows_with_its_argument_over_every_cell_border) {
  double before = -k_infinity;
  for (double x = .6; x < 1.7; x += 1.0 / 16384) {
    const double now = portable_log(x);
    ASSERT_GT(now, before) << x;
    before = now;
  }
}

TEST(PortableMath, odd_arguments_do_what_the_c_library_does) {
  EXPECT_EQ(portable_log(0), -k_infinity);
  EXPECT_TRUE(std::isnan(portable_log(-1)));
  EXPECT_TRUE(std::isnan(portable_log(std::numeric_limits<double>::quiet_NaN())));
  EXPECT_EQ(portable_log(k_infinity), k_infinity);
  EXPECT_EQ(portable_exp(-k_infinity), 0);
  EXPECT_EQ(portable_exp(k_infinity), k_infinity);
  EXPECT_EQ(portable_exp(710), k_infinity);
  EXPECT_EQ(portable_exp(-746), 0);
  EXPECT_TRUE(std::isnan(portable_exp(std::numeric_limits<double>::quiet_NaN())));
}

TEST(PortableMath, x_log_x_is_nothing_at_and_below_zero) {
  EXPECT_EQ(x_log_x(0), 0);
  EXPECT_EQ(x_log_x(-1e-17), 0);
  EXPECT_EQ(x_log_x(1), 0);
  EXPECT_NEAR(x_log_x(.5), -.34657359027997264, 1e-16);  // ln 2 / 2
}

}  // namespace
