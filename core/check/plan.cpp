#include "core/check/plan.h"

#include <algorithm>

#include "core/check/family_bank.h"

namespace rehale::check {

mastery::Plan plan_of(const catalog::Family& family, const Event& begin) {
  mastery::Plan plan = k_plan;
  for (const Id& id : begin.focus) {
    const int technique = technique_index(family, id);
    if (technique >= 0) plan.must |= mastery::bit(technique);
  }
  if (begin.questions > 0) {
    plan.fewest = plan.most = begin.questions;
    plan.may_stop = false;
  }
  return plan;
}

std::vector<Id> focus_of(const catalog::Family& family, std::span<const Id> wished) {
  std::vector<Id> focus;
  for (const catalog::Technique& technique : family.techniques) {
    const bool is_wished = std::ranges::any_of(wished, [&technique](const Id& id) {
      return id == technique.id || (!technique.shared.empty() && id == technique.shared);
    });
    if (is_wished) focus.push_back(technique.id);
  }
  return focus;
}

bool can_be_set(const catalog::Family& family, const Event& begin) {
  const bool fits =
      begin.questions == 0 || (begin.questions >= k_fewest_set && begin.questions <= k_most_set);
  return fits && std::ranges::all_of(begin.focus, [&](const Id& id) {
           return technique_index(family, id) >= 0 && std::ranges::count(begin.focus, id) == 1;
         });
}

}  // namespace rehale::check
