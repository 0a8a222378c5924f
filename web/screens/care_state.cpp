#include <algorithm>

#include "web/screens/care.h"

namespace rehale::screens {

namespace {

int number_of(const catalog::Care& numbers, const char* id) {
  const auto* found = numbers.find(id);
  return found == nullptr ? 0 : static_cast<int>(found->target_low.value_or(0));
}

}  // namespace

exchange::CareState fresh_care(const catalog::Care& numbers, Day today) {
  exchange::CareState state{.family = numbers.family, .counted = today};
  state.left = number_of(numbers, "doses");
  return state;
}

int a_day(const exchange::CareState& told) { return told.doses_a_day * told.puffs; }

int by_plan(const exchange::CareState& told, Day today) {
  const auto due = static_cast<std::int64_t>(a_day(told)) * std::max(0, today - told.counted);
  return static_cast<int>(std::max<std::int64_t>(0, told.left - due));
}

void take_back(Care& care, const exchange::CareState& told, Day today) {
  care.told = told;
  care.known = true;
  care.recounted = false;
  care.has_used = told.used.has_value();
  care.before.reset();
  if (told.counted >= today) return;
  care.before = told;
  care.told.left = by_plan(told, today);
  care.told.counted = today;
}

}  // namespace rehale::screens
