// When to check again: the day on which the first critical habit may have faded, never later than
// common practice. Must not know content or clocks. Rules: facts/diagnosis.md 3.4, technique.md 3d.
#pragma once

#include <optional>
#include <span>

#include "core/base/civil.h"
#include "core/recheck/fsrs.h"

namespace rehale::recheck {

// What one check showed of a habit: 1 below .5 or when a rule against it is held, 2 to .8, 3 to
// .95, 4 from .95 on when no answer about it was amiss.
[[nodiscard]] Grade grade_of(double has, bool rule_held, bool all_met);

struct Seen {
  Day day = 0;
  Grade grade = Grade::lost;
};
// The checks of one habit, oldest first; nothing when there is none. Days that run backwards count
// as the same day.
[[nodiscard]] std::optional<Memory> memory_of(const Profile& profile, std::span<const Seen> checks);

struct Habit {
  double has = 0;  // probability of having it, after today's check
  Memory memory;
  bool critical = false;
};

// Common practice: 4 weeks after the first check, then every 3 months (Ovc11, Azz17; library.json
// "recheck", "recheck_later").
struct Marks {
  int first_days = 28, later_months = 3;
};

enum class Why : unsigned char {
  not_yet,  // a critical habit is not there yet: soon again
  fades,    // a critical habit may have faded by then
  mark,     // common practice comes first
};
struct NextCheck {
  Day on = 0;
  Why why = Why::mark;
  int habit = -1;  // which one decides; -1 for the mark
};

inline constexpr double k_still_likely = .80;  // a habit below this is due
inline constexpr int k_soonest_days = 7, k_latest_days = 180;

// `first`: no earlier check of this family in which all critical habits were there.
[[nodiscard]] NextCheck next_check(std::span<const Habit> habits, Day today, bool first,
                                   const Marks& marks = {});

}  // namespace rehale::recheck
