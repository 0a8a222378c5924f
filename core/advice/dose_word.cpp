#include "core/advice/dose_word.h"

#include <algorithm>
#include <array>

namespace rehale::advice {

namespace {

void apply(dose::Technique& puff, const catalog::DoseHabit& habit) {
  if (habit.change == "press-s") puff.press_s = habit.value;
  if (habit.change == "hold-s") puff.hold_s = habit.value;
  if (habit.change == "vents-covered") puff.vents_covered = habit.value;
  if (habit.change == "breath-s") {
    puff.flow_l_per_min = dose::mean_flow_l_per_min(puff.inspired_ml, habit.value);
  }
  if (habit.change == "not-shaken") puff.shaken = false;
  if (habit.change == "tilted") puff.tilted = true;
  if (habit.change == "breathed-into") puff.breathed_into_device = true;
  if (habit.change == "loaded-twice") puff.loaded_twice = true;
}

bool invented(const dose::Leans& leans) {
  return leans.has(dose::Lean::breathed_in) || leans.has(dose::Lean::vents);
}

}  // namespace

std::optional<dose::Technique> good_puff(const catalog::Family& family) {
  const auto device = dose::find_device(family.dose.device);
  if (!device) return std::nullopt;
  return dose::good_technique(*device);
}

std::optional<dose::Technique> puff_with(const catalog::Family& family,
                                         const std::vector<catalog::Id>& habits) {
  auto puff = good_puff(family);
  if (!puff) return std::nullopt;
  bool any = false;
  for (const catalog::DoseHabit& habit : family.dose.habits) {
    if (std::ranges::find(habits, habit.habit) == habits.end()) continue;
    apply(*puff, habit);
    any = true;
  }
  return any ? puff : std::nullopt;
}

std::string_view share_word(double share) {
  struct Step {
    double below;
    std::string_view word;
  };
  constexpr std::array<Step, 7> k_steps{{{.03, "none"},
                                         {.20, "small"},
                                         {.42, "third"},
                                         {.58, "half"},
                                         {.71, "two-thirds"},
                                         {.84, "three-quarters"},
                                         {.96, "little-less"}}};
  for (const Step& step : k_steps) {
    if (share < step.below) return step.word;
  }
  return "same";
}

std::optional<DoseWord> dose_word(const catalog::Family& family, const catalog::Id& habit) {
  const auto puff = puff_with(family, {habit});
  if (!puff) return std::nullopt;
  const auto compared = dose::compare(*puff, *good_puff(family));
  if (!compared || invented(compared->yours.leans)) return std::nullopt;
  const dose::Band& share = compared->share;
  return DoseWord{share_word(share.likely), share_word(share.low), share_word(share.high),
                  compared->yours.leans.has(dose::Lean::loaded_twice)};
}

}  // namespace rehale::advice
