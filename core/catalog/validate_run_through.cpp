#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

void validate_step(const Check& check, const RunStep& step, const std::string& pointer) {
  const auto& family = check.family;
  const auto& steps = family.run_through.steps;
  expect_known(check, family.actions, step.id, pointer + "/action", "action");
  expect_known(check, family.actions, step.ends, pointer + "/ends", "action");
  expect_known(check, family.actions, step.cut_short, pointer + "/cut_short", "action");
  expect_known(check, family.techniques, step.technique, pointer + "/technique", "technique");
  expect_known(check, family.misconceptions, step.betrays, pointer + "/betrays", "misconception");
  expect_known(check, steps, step.from, pointer + "/from", "step");
  expect_known(check, steps, step.until, pointer + "/until", "step");
  if (!step.timed && !step.ends.empty())
    check(pointer + "/ends", "not-timed", {"only a timed step ends; add \"timed\": true"});
  if (step.ends.empty() && !step.cut_short.empty())
    check(pointer + "/cut_short", "ends-needed", {"say first what is done when it ends as wanted"});
}

// once, twice: steps only.
void validate_list(const Check& check, const std::vector<Id>& list, const std::string& pointer) {
  for (std::size_t i = 0; i < list.size(); ++i)
    expect_known(check, check.family.run_through.steps, list[i], at(pointer, i), "step");
}

void validate_steps_of(const Check& check, const std::vector<Id>& ids, bool lasts,
                       const std::string& pointer) {
  const auto& steps = check.family.run_through.steps;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    expect_known(check, steps, ids[i], at(pointer, i), "step");
    const auto* step = find(steps, ids[i]);
    if (lasts && step != nullptr && !step->timed)
      check(at(pointer, i), "not-timed", {"\"", ids[i], "\" has no length to measure"});
  }
}

void validate_timed(const Check& check, const TimedCriterion& timed, const std::string& pointer) {
  const auto& criteria = check.family.criteria;
  expect_known(check, criteria, timed.criterion, pointer + "/criterion", "criterion");
  const auto* criterion = find(criteria, timed.criterion);
  if (criterion != nullptr && criterion->technique.empty())
    check(pointer + "/criterion", "technique-needed", {"the criterion must be of a technique"});
  if (criterion != nullptr && !criterion->pass_low && !criterion->pass_high)
    check(pointer + "/criterion", "pass-needed", {"the criterion must say what counts as right"});
  if (timed.steps.empty()) check(pointer + "/steps", "too-few-values", {"name a step"});
  const bool lasts = timed.measure == Measure::lasts;
  if (lasts != timed.of.empty()) {
    check(pointer + "/of", "measure-of",
          {lasts ? "\"lasts\" is measured of nothing else" : "name the steps it is measured from"});
  }
  validate_steps_of(check, timed.steps, lasts, pointer + "/steps");
  validate_steps_of(check, timed.of, !lasts, pointer + "/of");
  if (!(timed.tolerance >= 0)) check(pointer + "/tolerance", "out-of-range", {"0 or more"});
  validate_provenance(check, timed.from, pointer);
}

}  // namespace

void validate_run_through(const Check& check) {
  const auto& run = check.family.run_through;
  if (run.steps.empty()) return;
  expect_unique(check, run.steps, "/run_through/steps");
  for (std::size_t i = 0; i < run.steps.size(); ++i)
    validate_step(check, run.steps[i], at("/run_through/steps", i));
  if (run.once.empty()) check("/run_through/once", "ideal-run", {"list the steps of one dose"});
  validate_list(check, run.once, "/run_through/once");
  validate_list(check, run.twice, "/run_through/twice");
  for (std::size_t i = 0; i < run.timed.size(); ++i)
    validate_timed(check, run.timed[i], at("/run_through/timed", i));
}

}  // namespace rehale::catalog
