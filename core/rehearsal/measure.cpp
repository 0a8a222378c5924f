#include "core/rehearsal/measure.h"

#include <cmath>
#include <utility>

#include "core/catalog/lookup.h"

namespace rehale::rehearsal {
namespace {

using catalog::Criterion;
using catalog::Family;
using catalog::Measure;
using catalog::TimedCriterion;

constexpr double k_ms_per_s = 1000;

double lasts_s(const Act& act) { return (act.end_ms - act.start_ms) / k_ms_per_s; }

bool is_one(const std::vector<Id>& steps, const Act& act) {
  return catalog::index_of(steps, act.step) >= 0;
}

// Seconds from the nearest `of` to the act; an `of` it lies in is the nearest.
std::optional<double> after_start_s(const TimedCriterion& timed, const std::vector<Act>& acts,
                                    const Act& act) {
  std::optional<double> nearest;
  for (const Act& of : acts) {
    if (!is_one(timed.of, of)) continue;
    const double gap = (act.start_ms - of.start_ms) / k_ms_per_s;
    if (gap >= 0 && act.start_ms < of.end_ms) return gap;
    if (!nearest || std::abs(gap) < std::abs(*nearest)) nearest = gap;
  }
  return nearest;
}

std::optional<double> after_end_s(const TimedCriterion& timed, const std::vector<Act>& acts,
                                  const Act& act) {
  std::optional<double> last;
  for (const Act& of : acts) {
    if (is_one(timed.of, of) && of.end_ms <= act.start_ms)
      last = (act.start_ms - of.end_ms) / k_ms_per_s;
  }
  return last;
}

Finding judged(const Criterion& criterion, double tolerance, double value) {
  Finding finding;
  finding.criterion = criterion.id;
  finding.technique = criterion.technique;
  finding.value = value;
  if (criterion.pass_low && value < *criterion.pass_low)
    finding.beyond = value - *criterion.pass_low;
  if (criterion.pass_high && value > *criterion.pass_high)
    finding.beyond = value - *criterion.pass_high;
  finding.met = std::abs(finding.beyond) <= tolerance;
  finding.forgiven = finding.met && finding.beyond != 0;
  return finding;
}

std::optional<double> value_of(const TimedCriterion& timed, const std::vector<Act>& acts,
                               const Act& act) {
  if (timed.measure == Measure::lasts) return lasts_s(act);
  if (timed.measure == Measure::after_start_of) return after_start_s(timed, acts, act);
  return after_end_s(timed, acts, act);
}

// How many of the steps start within each `of`. Only what is off is told: the right number shows no
// habit yet, and none at all is for others to tell.
void count_all(const TimedCriterion& timed, const Criterion& criterion,
               const std::vector<Act>& acts, std::vector<Finding>& findings) {
  for (const Act& of : acts) {
    if (!is_one(timed.of, of)) continue;
    int count = 0, first = -1;
    for (std::size_t n = 0; n < acts.size(); ++n) {
      const Act& act = acts[n];
      if (!is_one(timed.steps, act)) continue;
      if (act.start_ms < of.start_ms || act.start_ms >= of.end_ms) continue;
      if (count++ == 0) first = static_cast<int>(n);
    }
    if (count == 0) continue;
    Finding finding = judged(criterion, timed.tolerance, count);
    if (finding.met) continue;
    findings.push_back(std::move(finding));
    findings.back().step = acts[static_cast<std::size_t>(first)].step;
    findings.back().act = first;
  }
}

const Criterion* criterion_of(const Family& family, const TimedCriterion& timed) {
  return catalog::find(family.criteria, timed.criterion);
}

// The criterion by which a step's length is judged.
const TimedCriterion* length_of(const Family& family, const Id& step) {
  for (const TimedCriterion& timed : family.run_through.timed) {
    if (timed.measure == Measure::lasts && catalog::index_of(timed.steps, step) >= 0) return &timed;
  }
  return nullptr;
}

}  // namespace

std::vector<Finding> measure_all(const Family& family, const std::vector<Act>& acts) {
  std::vector<Finding> findings;
  for (const TimedCriterion& timed : family.run_through.timed) {
    const Criterion* criterion = criterion_of(family, timed);
    if (criterion == nullptr) continue;
    if (timed.measure == Measure::count_in) {
      count_all(timed, *criterion, acts, findings);
      continue;
    }
    for (std::size_t n = 0; n < acts.size(); ++n) {
      if (!is_one(timed.steps, acts[n]) || acts[n].skipped) continue;
      const auto value = value_of(timed, acts, acts[n]);
      if (!value) continue;
      findings.push_back(judged(*criterion, timed.tolerance, *value));
      findings.back().step = acts[n].step;
      findings.back().act = static_cast<int>(n);
    }
  }
  return findings;
}

bool stopped_short(const Family& family, const Act& act) {
  const TimedCriterion* timed = length_of(family, act.step);
  const Criterion* criterion = timed == nullptr ? nullptr : criterion_of(family, *timed);
  if (criterion == nullptr) return false;
  const Finding finding = judged(*criterion, timed->tolerance, lasts_s(act));
  return !finding.met && finding.beyond < 0;
}

double place_ms(const Family& family, const std::vector<Act>& acts, const Act& act) {
  for (const TimedCriterion& timed : family.run_through.timed) {
    if (timed.measure != Measure::after_start_of || !is_one(timed.steps, act)) continue;
    const Criterion* criterion = criterion_of(family, timed);
    const auto value = after_start_s(timed, acts, act);
    if (criterion == nullptr || !value || *value >= 0) continue;
    const Finding finding = judged(*criterion, timed.tolerance, *value);
    if (finding.met) return act.start_ms - *value * k_ms_per_s;
  }
  return act.start_ms;
}

std::optional<double> aim_s(const Family& family, const Id& step) {
  const TimedCriterion* timed = length_of(family, step);
  const Criterion* criterion = timed == nullptr ? nullptr : criterion_of(family, *timed);
  if (criterion == nullptr) return std::nullopt;
  if (criterion->target_low && criterion->target_high)
    return (*criterion->target_low + *criterion->target_high) / 2;
  return criterion->target_low ? criterion->target_low : criterion->target_high;
}

}  // namespace rehale::rehearsal
