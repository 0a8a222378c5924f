// What a family says of its dose: device, habits, changes and their values. The ranges are those in
// which the dose model answers (core/dose/technique.h; a test holds the two together).
#include <algorithm>

#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

struct Limits {
  std::string_view change;
  double low, high;
};
constexpr Limits k_limits[] = {
    {"press-s", -60, 60}, {"breath-s", .75, 24}, {"hold-s", 0, 60}, {"vents-covered", 0, .95}};

void validate_habit(const Check& check, const DoseHabit& habit, const std::string& pointer) {
  const Family& family = check.family;
  const bool known = index_of(family.techniques, habit.habit) >= 0 ||
                     index_of(family.misconceptions, habit.habit) >= 0;
  if (!known && !habit.habit.empty()) {
    tell_unknown(check, habit.habit, pointer + "/habit", "technique");
  }
  if (std::ranges::find(k_dose_changes, habit.change) == std::end(k_dose_changes)) {
    check(pointer + "/change", "unknown-change", {"see k_dose_changes in core/catalog/model.h"});
  }
  const auto* limits = std::ranges::find(k_limits, habit.change, &Limits::change);
  const bool counts = limits != std::end(k_limits);
  const double low = counts ? limits->low : 0;
  const double high = counts ? limits->high : 0;
  if (!(habit.value >= low && habit.value <= high)) {
    check(pointer + "/value", "out-of-range", {"the dose model has no answer for this value"});
  }
  validate_provenance(check, habit.from, pointer);
}

}  // namespace

void validate_dose(const Check& check) {
  const DoseModel& dose = check.family.dose;
  if (dose.device.empty()) return;
  if (std::ranges::find(k_dose_devices, dose.device) == std::end(k_dose_devices)) {
    check("/dose/device", "unknown-device", {"see k_dose_devices in core/catalog/model.h"});
  }
  for (std::size_t i = 0; i < dose.habits.size(); ++i) {
    validate_habit(check, dose.habits[i], at("/dose/habits", i));
    const auto same = [&](const DoseHabit& h) { return h.habit == dose.habits[i].habit; };
    if (std::ranges::count_if(dose.habits, same) > 1 && !dose.habits[i].habit.empty()) {
      tell_duplicate(check, dose.habits[i].habit, at("/dose/habits", i, "/habit"));
    }
  }
  for (std::size_t i = 0; i < dose.sources.size(); ++i) {
    if (!check.library.sources.contains(dose.sources[i])) {
      check(at("/dose/sources", i), "unknown-source",
            {"\"", dose.sources[i], "\" is not among the sources of library.json"});
    }
  }
}

}  // namespace rehale::catalog
