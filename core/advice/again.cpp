#include "core/advice/again.h"

#include <algorithm>
#include <vector>

#include "core/catalog/lookup.h"

namespace rehale::advice {

namespace {

bool rule_held(const catalog::Family& family, const mastery::Verdict& verdict,
               const catalog::Id& technique) {
  for (std::size_t n = 0; n < verdict.misconceptions.size(); ++n) {
    const bool held = verdict.misconceptions[n].held == mastery::Held::held;
    if (held && family.misconceptions[n].rules_out == technique) return true;
  }
  return false;
}

// No answer about it was amiss; "I'm not sure" is amiss for all that the question needs.
bool all_met(const catalog::Family& family, const std::vector<check::Given>& given,
             const catalog::Id& technique) {
  return std::ranges::none_of(given, [&](const check::Given& one) {
    const auto& needs = family.questions[static_cast<std::size_t>(one.question)].techniques;
    if (one.marking.unsure) return catalog::index_of(needs, technique) >= 0;
    return std::ranges::any_of(one.marking.marks, [&technique](const check::Mark& mark) {
      return mark.technique == technique && !mark.met;
    });
  });
}

std::vector<recheck::Seen> seen_of(const catalog::Family& family, std::span<const Checked> checks,
                                   int technique) {
  std::vector<recheck::Seen> seen;
  for (const Checked& checked : checks)
    seen.push_back({checked.day, grade_of(family, checked.read, technique)});
  return seen;
}

bool all_there(const catalog::Family& family, const check::ReadThrough& read) {
  for (std::size_t n = 0; n < family.techniques.size(); ++n) {
    if (!family.techniques[n].critical) continue;
    if (read.verdict.techniques[n].label != mastery::Label::has_it) return false;
  }
  return true;
}

}  // namespace

recheck::Grade grade_of(const catalog::Family& family, const check::ReadThrough& read,
                        int technique) {
  const auto n = static_cast<std::size_t>(technique);
  const catalog::Id& id = family.techniques[n].id;
  return recheck::grade_of(read.verdict.techniques[n].probability,
                           rule_held(family, read.verdict, id), all_met(family, read.given, id));
}

recheck::Marks marks_of(const catalog::Library& library) {
  recheck::Marks marks;
  const auto* weeks = catalog::find(library.criteria, "recheck");
  const auto* months = catalog::find(library.criteria, "recheck_later");
  if (weeks != nullptr && weeks->target_low)
    marks.first_days = 7 * static_cast<int>(*weeks->target_low);
  if (months != nullptr && months->target_low)
    marks.later_months = static_cast<int>(*months->target_low);
  return marks;
}

recheck::NextCheck next_check(const catalog::Family& family, std::span<const Checked> checks,
                              const recheck::Marks& marks) {
  const Checked& now = checks.back();
  const auto before = checks.first(checks.size() - 1);
  const bool first = std::ranges::none_of(
      before, [&family](const Checked& one) { return all_there(family, one.read); });
  std::vector<recheck::Habit> habits;
  for (std::size_t n = 0; n < family.techniques.size(); ++n) {
    const auto seen = seen_of(family, checks, static_cast<int>(n));
    habits.push_back({.has = now.read.verdict.techniques[n].probability,
                      .memory = *recheck::memory_of(recheck::habit_profile(), seen),
                      .critical = family.techniques[n].critical});
  }
  return recheck::next_check(habits, now.day, first, marks);
}

}  // namespace rehale::advice
