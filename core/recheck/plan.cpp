#include "core/recheck/plan.h"

#include <algorithm>

namespace rehale::recheck {

Grade grade_of(double has, bool rule_held, bool all_met) {
  if (rule_held || !(has >= .5)) return Grade::lost;
  if (has < k_still_likely) return Grade::shaky;
  return has >= .95 && all_met ? Grade::sure : Grade::there;
}

std::optional<Memory> memory_of(const Profile& profile, std::span<const Seen> checks) {
  std::optional<Memory> memory;
  Day before = 0;
  for (const Seen& seen : checks) {
    memory = memory ? next_memory(profile, *memory, std::max(0, seen.day - before), seen.grade)
                    : first_memory(profile, seen.grade);
    before = std::max(before, seen.day);
  }
  return memory;
}

NextCheck next_check(std::span<const Habit> habits, Day today, bool first, const Marks& marks) {
  NextCheck next{first ? today + marks.first_days : add_months(today, marks.later_months)};
  for (std::size_t n = 0; n < habits.size(); ++n) {
    const Habit& habit = habits[n];
    if (!habit.critical) continue;
    const bool there = habit.has >= k_still_likely;
    double days = k_soonest_days;
    if (there) {
      days = std::clamp<double>(
          days_until(habit_profile(), habit.memory.stability, k_still_likely / habit.has),
          k_soonest_days, k_latest_days);
    }
    const Day on = today + static_cast<int>(days);  // whole days, rounded to the safe side
    if (on < next.on || (on == next.on && next.why == Why::mark)) {
      next = {on, there ? Why::fades : Why::not_yet, static_cast<int>(n)};
    }
  }
  return next;
}

}  // namespace rehale::recheck
