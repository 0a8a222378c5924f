// Dates against Python's datetime (tests/reference/civil).
#include "core/base/civil.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace rehale {
namespace {

TEST(Civil, days_dates_and_later_months_are_those_of_python) {
  const auto text = support::read_file(support::source_path("tests/reference/civil/days.txt"));
  ASSERT_TRUE(text);
  int rows = 0;
  for (std::size_t at = 0; at < text->size(); at = text->find('\n', at) + 1, ++rows) {
    char date[11] = {};
    int day = 0, months = 0, then = 0;
    ASSERT_EQ(std::sscanf(text->c_str() + at, "%10s %d %d %d", date, &day, &months, &then), 4);
    EXPECT_EQ(iso_date(day), date);
    EXPECT_EQ(read_iso_date(date), day) << date;
    EXPECT_EQ(add_months(day, months), then) << date << " + " << months;
  }
  EXPECT_EQ(rows, 361);
}

TEST(Civil, every_day_comes_back) {
  for (Day day = -1000; day <= k_last_day; ++day) ASSERT_EQ(day_of(civil_of(day)), day);
}

TEST(Civil, only_days_there_are_can_be_read) {
  for (const char* text :
       {"2026-02-29", "2100-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "1969-12-31",
        "2026-1-01", "2026/01/01", "2026-01-0x", "", "2026-01-011"}) {
    EXPECT_FALSE(read_iso_date(text)) << text;
  }
  EXPECT_EQ(read_iso_date("9999-12-31"), k_last_day);
  EXPECT_EQ(iso_date(-1), "");
  EXPECT_EQ(iso_date(k_last_day + 1), "");
}

}  // namespace
}  // namespace rehale
