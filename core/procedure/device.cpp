#include "core/procedure/device.h"

#include <algorithm>
#include <string>

#include "core/catalog/lookup.h"

namespace rehale::procedure {
namespace {

using catalog::Action;
using catalog::DoseChange;
using catalog::Family;
using catalog::Id;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

const Id& value_of(const Family& family, const DeviceState& state, std::size_t variable) {
  return family.variables[variable].values[at(state.values[variable])];
}

bool is_one_of(const Family& family, const DeviceState& state, const Id& variable,
               const std::vector<Id>& allowed) {
  const int index = catalog::index_of(family.variables, variable);
  return index >= 0 && catalog::index_of(allowed, value_of(family, state, at(index))) >= 0;
}

void apply_settings(const Family& family, const std::vector<catalog::Setting>& settings,
                    DeviceState& state) {
  for (const auto& setting : settings) {
    const int variable = catalog::index_of(family.variables, setting.variable);
    if (variable < 0) continue;
    const int value = catalog::index_of(family.variables[at(variable)].values, setting.value);
    if (value >= 0) state.values[at(variable)] = value;
  }
}

// Whether a ready dose was lost.
bool change_doses(DoseChange change, Doses& doses) {
  if (change == DoseChange::inhale) {
    doses.inhaled += doses.ready;
    doses.ready = 0;
    return false;
  }
  const bool loads = change == DoseChange::load && doses.left > 0;
  const bool lost = doses.ready > 0 && (loads || change == DoseChange::waste);
  if (lost) {
    ++doses.wasted;
    doses.ready = 0;
  }
  if (loads) {
    --doses.left;
    doses.ready = 1;
  }
  return lost;
}

int spent(const Doses& doses) { return doses.inhaled + doses.wasted; }

// Where each dose cycle of a run starts (see run()), from the doses spent by the end of each
// action.
std::vector<std::size_t> cycle_starts(std::span<const Id> actions,
                                      const std::vector<int>& spent_by) {
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 1; i < actions.size(); ++i) {
    const auto start = starts.back();
    const int before_cycle = start > 0 ? spent_by[start - 1] : 0;
    const auto cycle = actions.subspan(start, i - start);
    const bool had_already = std::find(cycle.begin(), cycle.end(), actions[i]) != cycle.end();
    if (spent_by[i - 1] > before_cycle && had_already) starts.push_back(i);
  }
  return starts;
}

// Lapses stand by index; within one action needs, then rules, then waste.
void add_in_place(Lapse lapse, std::vector<Lapse>& lapses) {
  const auto later = std::find_if(lapses.begin(), lapses.end(), [&](const Lapse& other) {
    return other.index > lapse.index || (other.index == lapse.index && other.kind > lapse.kind);
  });
  lapses.insert(later, std::move(lapse));
}

void judge_rules(const Family& family, std::span<const Id> cycle, std::size_t start,
                 RunReport& report) {
  for (const auto& rule : family.rules) {
    const auto after = std::find(cycle.begin(), cycle.end(), rule.after);
    if (std::find(after, cycle.end(), rule.before) == cycle.end()) continue;
    if (std::find(cycle.begin(), after, rule.before) != after) continue;
    Lapse lapse;
    lapse.kind = Lapse::Kind::rule_broken;
    lapse.index = static_cast<int>(start + static_cast<std::size_t>(after - cycle.begin()));
    lapse.action = rule.after;
    lapse.technique = rule.technique;
    lapse.rule = rule.id;
    lapse.misconception = rule.misconception;
    add_in_place(std::move(lapse), report.lapses);
  }
}

}  // namespace

DeviceState start_state(const Family& family) {
  return {std::vector<int>(family.variables.size(), 0), {family.doses_at_start, 0, 0, 0}};
}

void perform(const Family& family, const Action& action, int index, RunReport& report) {
  const DeviceState before = report.state;
  bool blocked = false;
  for (const auto& need : action.needs) {
    if (is_one_of(family, before, need.variable, need.any_of)) continue;
    Lapse lapse;
    lapse.index = index;
    lapse.action = action.id;
    lapse.technique = need.technique;
    lapse.variable = need.variable;
    lapse.blocked = need.blocks;
    report.lapses.push_back(std::move(lapse));
    blocked = blocked || need.blocks;
  }
  if (blocked) return;

  for (const auto& effect : action.effects) {
    const bool holds =
        std::all_of(effect.when.begin(), effect.when.end(), [&](const auto& setting) {
          return is_one_of(family, before, setting.variable, {setting.value});
        });
    if (!holds) continue;
    apply_settings(family, effect.set, report.state);
    if (!change_doses(effect.dose, report.state.doses)) continue;
    Lapse lapse;
    lapse.kind = Lapse::Kind::dose_wasted;
    lapse.index = index;
    lapse.action = action.id;
    lapse.technique = effect.technique;
    report.lapses.push_back(std::move(lapse));
  }
}

Result<RunReport> run(const Family& family, std::span<const Id> actions) {
  RunReport report{start_state(family), {}};
  std::vector<int> spent_by;  // doses inhaled or wasted by the end of each action
  for (std::size_t i = 0; i < actions.size(); ++i) {
    const auto* action = catalog::find(family.actions, actions[i]);
    if (action == nullptr)
      return fail("unknown-action", std::to_string(i), "no action \"" + actions[i] + "\"");
    perform(family, *action, static_cast<int>(i), report);
    spent_by.push_back(spent(report.state.doses));
  }
  if (actions.empty()) return report;
  auto starts = cycle_starts(actions, spent_by);
  starts.push_back(actions.size());
  for (std::size_t c = 0; c + 1 < starts.size(); ++c)
    judge_rules(family, actions.subspan(starts[c], starts[c + 1] - starts[c]), starts[c], report);
  return report;
}

}  // namespace rehale::procedure
