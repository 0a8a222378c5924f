// When to check again, from whole checks of the shipped families. The days: rules of
// facts/diagnosis.md 3.4 and the marks of facts/technique.md 3d; the memory model itself is held
// against npm ts-fsrs in tests/core/recheck.
#include "core/advice/again.h"

#include <gtest/gtest.h>

#include "tests/support/courses.h"
#include "tests/support/shipped.h"

namespace rehale::advice {
namespace {

const Day k_today = day_of({2026, 11, 25});

Checked checked(const check::Course& course, Day day, std::vector<std::string> lacks = {}) {
  const auto run = support::scripted_run(course, {.lacks = std::move(lacks), .seed = 5});
  return {day, {run.given(), run.verdict()}};
}

TEST(Again, the_marks_are_those_of_the_library) {
  const auto marks = marks_of(support::shipped_library());
  EXPECT_EQ(marks.first_days, 28);
  EXPECT_EQ(marks.later_months, 3);
  EXPECT_EQ(marks_of({}).first_days, 28);
}

TEST(Again, a_first_check_is_never_later_than_four_weeks_and_never_sooner_than_one) {
  for (const auto& family : support::shipped_families()) {
    const auto& course = *support::shipped_course(family);
    for (const auto& technique : course.family.techniques) {
      const Checked all[] = {checked(course, k_today, {technique.id})};
      const auto next = next_check(course.family, all, {});
      EXPECT_LE(next.on, k_today + 28) << family << ' ' << technique.id;
      EXPECT_GE(next.on, k_today + 7) << family << ' ' << technique.id;
    }
  }
}

TEST(Again, a_step_that_matters_most_and_is_lacking_brings_it_forward_to_a_week) {
  const auto& course = *support::shipped_course("spray");
  int tried = 0;
  for (const auto& technique : course.family.techniques) {
    if (!technique.critical) continue;
    const Checked all[] = {checked(course, k_today, {technique.id})};
    const auto next = next_check(course.family, all, {});
    EXPECT_EQ(next.on, k_today + recheck::k_soonest_days) << technique.id;
    EXPECT_EQ(next.why, recheck::Why::not_yet) << technique.id;
    ASSERT_GE(next.habit, 0);
    EXPECT_TRUE(course.family.techniques[static_cast<std::size_t>(next.habit)].critical);
    ++tried;
  }
  EXPECT_GE(tried, 3);
}

TEST(Again, what_went_well_again_and_again_may_wait_longer_but_never_over_three_months) {
  const auto& course = *support::shipped_course("spray");
  std::vector<Checked> all{checked(course, k_today - 200)};
  const Day once = next_check(course.family, all, {}).on - all.back().day;
  all.push_back(checked(course, k_today - 100));
  all.push_back(checked(course, k_today));
  const auto next = next_check(course.family, all, {});
  EXPECT_GE(next.on - k_today, once);
  EXPECT_LE(next.on, add_months(k_today, 3));
}

TEST(Again, a_grade_falls_with_an_answer_that_was_amiss) {
  const auto& course = *support::shipped_course("spray");
  const auto& techniques = course.family.techniques;
  const auto good = checked(course, k_today).read;
  for (std::size_t n = 0; n < techniques.size(); ++n) {
    if (!techniques[n].critical) continue;
    const int index = static_cast<int>(n);
    const auto lacking = checked(course, k_today, {techniques[n].id}).read;
    EXPECT_EQ(grade_of(course.family, lacking, index), recheck::Grade::lost) << techniques[n].id;
    EXPECT_GT(grade_of(course.family, good, index), recheck::Grade::lost) << techniques[n].id;
  }
}

}  // namespace
}  // namespace rehale::advice
