// The desk's heap between frames: how much is taken at a time, and a large group added up in steps.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <memory>

#include "tests/support/made_codes.h"
#include "web/screens/desk_state.h"

namespace rehale::screens {
namespace {

TEST(Desk, asks_for_as_much_at_a_time_as_keeps_nobody_waiting) {
  Portions portions;
  const std::size_t first = portions.letters();
  EXPECT_TRUE(portions.took(1000, 1001));  // quick: more at a time, and the first word at once
  EXPECT_EQ(portions.letters(), 2 * first);
  EXPECT_FALSE(portions.took(1001, 1026));  // just right
  EXPECT_EQ(portions.letters(), 2 * first);
  EXPECT_FALSE(portions.took(1026, 1126));  // four times too long
  EXPECT_EQ(portions.letters(), first);
  EXPECT_TRUE(portions.took(1240, 1265));  // a quarter of a second since the last word
  for (int n = 0; n < 40; ++n) (void)portions.took(2000, 9000);
  EXPECT_GT(portions.letters(), 0U);
  for (int n = 0; n < 40; ++n) (void)portions.took(9000, 9000);
  EXPECT_LT(portions.letters(), 20'000U);
}

TEST(Desk, stops_where_it_is_full_says_so_and_keeps_what_was_read) {
  const check::Course& course = support::ok_course();
  check::Event begin{.what = check::What::begin, .family = course.family.id};
  begin.content = course.content;
  begin.language = "en";
  Desk desk;
  desk.most_results = 3;
  desk.begin_reading({std::shared_ptr<const check::Course>(&course, [](const check::Course*) {})});
  bool goes_on = true;
  for (begin.seed = 1; begin.seed <= 5 && goes_on; ++begin.seed)
    goes_on = desk.take("text 0 1 many\n" + *exchange::write_result({}, {begin}, course.family));
  EXPECT_FALSE(goes_on);
  EXPECT_EQ(desk.intake.records().size(), 3U);
  ASSERT_EQ(desk.intake.unread().size(), 1U);
  EXPECT_EQ(desk.intake.unread().front().error.code, "heap-full");
  desk.end_reading();
  while (desk.add_up()) {
  }
  EXPECT_EQ(desk.people().size(), 3U);
}

TEST(Desk, a_large_group_is_added_up_in_steps_to_the_same_numbers) {
  const check::Course& course = support::ok_course();
  check::Event begin{.what = check::What::begin, .family = course.family.id};
  begin.content = course.content;
  begin.language = "en";
  std::string text = "text 0 1 many\n";
  for (begin.seed = 1; begin.seed <= 4500; ++begin.seed) {  // nobody answered anything
    const exchange::ResultHead head{.day = static_cast<Day>(begin.seed % 700)};
    text += *exchange::write_result(head, {begin}, course.family) + '\n';
  }
  Desk desk;
  desk.begin_reading({std::shared_ptr<const check::Course>(&course, [](const check::Course*) {})});
  EXPECT_TRUE(desk.take(text));
  desk.end_reading();
  EXPECT_TRUE(desk.add_up());
  EXPECT_EQ(desk.work(), Desk::Work::adding);
  while (desk.add_up()) {
  }
  EXPECT_EQ(desk.work(), Desk::Work::none);
  EXPECT_EQ(desk.summary(), cohort::summarise(desk.intake.records()));
  EXPECT_EQ(desk.people().size(), 4500U);
  desk.sort = DeskSort::newest;
  desk.filter_changed();
  const auto day = [&desk](std::size_t n) { return desk.intake.records()[n].day; };
  EXPECT_TRUE(std::ranges::is_sorted(desk.people(), std::greater<>(), day));
  EXPECT_EQ(day(desk.people().front()), 699);
}

}  // namespace
}  // namespace rehale::screens
