// Counts of a shared device: what is added, what is never shown, what comes back from its line of
// text, and lines that are none. The counts are held against a count by hand of scripted checks.
#include "core/exchange/day_tally.h"

#include <gtest/gtest.h>

#include "core/cohort/tables.h"
#include "tests/support/courses.h"

namespace rehale::exchange {
namespace {

constexpr Day k_today = 20784;  // 2026-11-27, Python's datetime

cohort::Record record_lacking(const std::vector<std::string>& lacks, std::uint64_t seed) {
  const auto course = support::shipped_course("spray");
  return cohort::record_of(support::scripted_run(*course, {.lacks = lacks, .seed = seed}), {});
}

const catalog::Family& spray() { return support::shipped_course("spray")->family; }

DayTally tally_of(int people) {
  DayTally tally;
  for (int n = 0; n < people; ++n)
    count_check(tally, k_today,
                record_lacking({"breathe-then-press"}, static_cast<std::uint64_t>(n + 1)), spray());
  return tally;
}

TEST(DayTally, counts_people_and_what_each_was_told) {
  DayTally tally;
  std::int64_t by_hand = 0;
  std::size_t place = 0;
  while (spray().techniques[place].id != "breathe-then-press") ++place;
  for (std::uint64_t n = 1; n <= 8; ++n) {
    const auto record = record_lacking({"breathe-then-press"}, n);
    if (record.techniques[place].told == cohort::Told::not_yet) ++by_hand;
    count_check(tally, k_today, record, spray());
  }
  ASSERT_EQ(tally.families.size(), 1U);
  EXPECT_EQ(tally.families[0].checks, 8);
  EXPECT_GT(by_hand, 0);
  EXPECT_EQ(not_yet(tally.families[0], "breathe-then-press"), by_hand);
}

TEST(DayTally, another_day_begins_with_nothing) {
  DayTally tally = tally_of(3);
  count_check(tally, k_today + 1, record_lacking({}, 1), spray());
  EXPECT_EQ(tally.day, k_today + 1);
  EXPECT_EQ(tally.families[0].checks, 1);
  EXPECT_EQ(not_yet(tally.families[0], "breathe-then-press"), 0);
  count_check(tally, k_today, record_lacking({}, 1), spray());  // the clock was set back
  EXPECT_EQ(tally.families[0].checks, 1);
}

TEST(DayTally, fewer_than_five_are_never_shown) {
  for (std::int64_t count = 0; count < cohort::k_least_cell; ++count)
    EXPECT_FALSE(shown_count(count)) << count;
  EXPECT_EQ(shown_count(cohort::k_least_cell), cohort::k_least_cell);
}

TEST(DayTally, comes_back_from_its_line_of_text) {
  DayTally tally = tally_of(6);
  tally.families.push_back({"soft-mist", 3, {}});
  const auto back = read_tally(write_tally(tally));
  ASSERT_TRUE(back) << back.error().where;
  EXPECT_EQ(*back, tally);
  const auto empty = read_tally(write_tally({.day = k_today, .families = {}}));
  ASSERT_TRUE(empty) << empty.error().where;
  EXPECT_TRUE(empty->families.empty());
}

TEST(DayTally, what_is_no_such_line_is_told_apart) {
  for (const char* text :
       {"", "2 20784", "1", "1 x", "1 -3", "1 20784 spray", "1 20784 spray -1", "1 20784 spray 1e9",
        "1 20784 spray 5 hold-breath", "1 20784 spray 5 hold-breath 6", "1 20784 SPRAY 5",
        "1 20784 spray 5;soft-mist 3", "1 20784 spray 5 ; ", "1 20784 <b> 5", "1  20784"}) {
    const auto read = read_tally(text);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().code, "tally-shape") << text;
  }
  EXPECT_EQ(read_tally(std::string(k_most_tally_bytes + 1, '1')).error().code, "tally-too-long");
}

}  // namespace
}  // namespace rehale::exchange
