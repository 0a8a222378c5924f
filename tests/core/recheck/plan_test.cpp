// When to check again: the rules of facts/diagnosis.md 3.4 under the marks of common practice.
#include "core/recheck/plan.h"

#include <gtest/gtest.h>

#include "core/base/rng.h"

namespace rehale::recheck {
namespace {

const Day k_today = day_of({2026, 11, 25});

Habit habit(double has, double stability, bool critical = true) {
  return {has, {stability, 5}, critical};
}

TEST(Recheck, comes_when_the_first_critical_habit_may_have_faded) {
  const Habit habits[] = {habit(.99, 30), habit(.9, 15.5), habit(.99, 1, false)};
  const auto next = next_check(habits, k_today, true);
  EXPECT_EQ(next.why, Why::fades);
  EXPECT_EQ(next.habit, 1);
  // S ((.8/.9)^-2 - 1) / (19/81), by hand
  EXPECT_EQ(next.on, k_today + static_cast<int>(15.5 * (81.0 / 64 - 1) * 81 / 19));
}

TEST(Recheck, comes_in_a_week_while_a_critical_habit_is_not_there) {
  const Habit habits[] = {habit(.99, 30), habit(.3, 3)};
  const auto next = next_check(habits, k_today, false);
  EXPECT_EQ(next.on, k_today + 7);
  EXPECT_EQ(next.why, Why::not_yet);
  EXPECT_EQ(next.habit, 1);
}

// Re-check at 4 weeks, then every 3 months (Ovc11, Azz17).
TEST(Recheck, is_never_later_than_common_practice) {
  const Habit solid[] = {habit(1, 400)};
  auto next = next_check(solid, k_today, true);
  EXPECT_EQ(next.on, k_today + 28);
  EXPECT_EQ(next.why, Why::mark);
  EXPECT_EQ(next.habit, -1);
  EXPECT_EQ(next_check(solid, k_today, false).on, day_of({2027, 2, 25}));
  Rng rng(5);
  for (int round = 0; round < 2000; ++round) {
    const Habit habits[] = {habit(rng.uniform(), rng.uniform(.1, 900)),
                            habit(rng.uniform(), rng.uniform(.1, 900))};
    for (const bool first : {true, false}) {
      next = next_check(habits, k_today, first);
      EXPECT_GE(next.on, k_today + 7);
      EXPECT_LE(next.on, first ? k_today + 28 : add_months(k_today, 3));
    }
  }
}

TEST(Recheck, without_critical_habits_the_mark_stands) {
  EXPECT_EQ(next_check({}, k_today, true).on, k_today + 28);
}

TEST(Recheck, grades_follow_the_probability_and_the_answers) {
  EXPECT_EQ(grade_of(.49, false, true), Grade::lost);
  EXPECT_EQ(grade_of(.99, true, true), Grade::lost);
  EXPECT_EQ(grade_of(.5, false, true), Grade::shaky);
  EXPECT_EQ(grade_of(.8, false, true), Grade::there);
  EXPECT_EQ(grade_of(.95, false, true), Grade::sure);
  EXPECT_EQ(grade_of(.95, false, false), Grade::there);
}

TEST(Recheck, memory_follows_the_checks_in_their_order) {
  EXPECT_FALSE(memory_of(habit_profile(), {}));
  const Seen checks[] = {{100, Grade::there}, {128, Grade::sure}, {120, Grade::sure}};
  const auto memory = memory_of(habit_profile(), checks);
  auto wanted =
      next_memory(habit_profile(), first_memory(habit_profile(), Grade::there), 28, Grade::sure);
  wanted = next_memory(habit_profile(), wanted, 0, Grade::sure);  // a day that runs backwards
  EXPECT_EQ(memory->stability, wanted.stability);
  EXPECT_GT(memory->stability, 28);
}

}  // namespace
}  // namespace rehale::recheck
