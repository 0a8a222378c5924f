// Against the C library's strtod, to the bit.
#include "web/shell/short_decimal.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <cstdlib>
#include <string>

#include "core/base/rng.h"

namespace {

using rehale::shell::read_short_decimal;

TEST(ShortDecimal, reads_what_strtod_reads_to_the_bit) {
  rehale::Rng rng(11);
  int read = 0;
  for (int n = 0; n < 200'000; ++n) {
    std::string text = rng.below(2) == 0 ? "-" : "";
    const auto digits = 1 + rng.below(15);
    const auto point = rng.below(digits + 1);
    for (std::uint64_t k = 0; k < digits; ++k) {
      if (k == point && k > 0) text += '.';
      text += static_cast<char>('0' + rng.below(10));
    }
    if (rng.below(3) == 0) text += "e" + std::to_string(static_cast<int>(rng.below(30)) - 12);
    const auto value = read_short_decimal(text);
    if (!value) continue;
    ++read;
    ASSERT_EQ(std::bit_cast<std::uint64_t>(*value),
              std::bit_cast<std::uint64_t>(std::strtod(text.c_str(), nullptr)))
        << text;
  }
  EXPECT_GT(read, 150'000);
}

TEST(ShortDecimal, leaves_the_rest_to_the_long_way) {
  for (const char* text : {"", "-", ".5", "5.", "1e", "1e+", "0x10", "inf", "nan", "1 ", " 1",
                           "1e23", "1e-23", "1234567890123456", "1e1000"}) {
    EXPECT_FALSE(read_short_decimal(text)) << text;
  }
  EXPECT_EQ(read_short_decimal("0.35"), 0.35);
  EXPECT_EQ(read_short_decimal("-12"), -12.0);
  EXPECT_EQ(read_short_decimal("4E3"), 4000.0);
  EXPECT_TRUE(std::signbit(*read_short_decimal("-0")));
}

TEST(ShortDecimal, is_written_without_zeros_at_the_end) {
  using rehale::shell::short_decimal;
  EXPECT_EQ(short_decimal(3, 1), "3");
  EXPECT_EQ(short_decimal(2.5, 3), "2.5");
  EXPECT_EQ(short_decimal(-0.05, 2), "-0.05");
  EXPECT_EQ(short_decimal(-0.0001, 3), "0");
  EXPECT_EQ(short_decimal(119.9996, 3), "120");
  EXPECT_EQ(short_decimal(0.0625, 3), "0.063");
  EXPECT_EQ(short_decimal(1e300, 3), "1000000000");
  EXPECT_EQ(short_decimal(-INFINITY, 3), "-1000000000");
  EXPECT_EQ(short_decimal(NAN, 3), "0");
}

}  // namespace
