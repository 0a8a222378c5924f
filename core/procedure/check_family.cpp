#include "core/procedure/check_family.h"

#include <algorithm>
#include <string_view>

#include "core/catalog/joined.h"
#include "core/catalog/lookup.h"
#include "core/procedure/device.h"
#include "core/procedure/grade.h"

namespace rehale::procedure {
namespace {

using catalog::Family;
using catalog::Finding;
using catalog::Id;
using catalog::joined;

std::string place(std::string_view list, std::size_t index) {
  return joined({list, "/", std::to_string(index)});
}

struct Place {
  std::string file, pointer;
};

std::string words(const Lapse& lapse) {
  switch (lapse.kind) {
    case Lapse::Kind::need_broken:
      return joined({"needs another value of ", lapse.variable});
    case Lapse::Kind::rule_broken:
      return joined({"breaks the rule ", lapse.rule});
    case Lapse::Kind::dose_wasted:
      break;
  }
  return "wastes a dose";
}

void check_ideal(const Family& family, const std::string& file, std::vector<Finding>& findings) {
  const auto report = run(family, family.ideal);
  if (!report) {
    findings.push_back({file, "/ideal", "ideal-run", report.error().detail});
    return;
  }
  for (const auto& lapse : report->lapses) {
    findings.push_back({file, place("/ideal", static_cast<std::size_t>(lapse.index)), "ideal-run",
                        joined({"\"", lapse.action, "\" ", words(lapse)})});
  }
  const auto& doses = report->state.doses;
  if (doses.inhaled != 1 || doses.wasted != 0 || doses.ready != 0) {
    findings.push_back(
        {file, "/ideal", "ideal-run",
         joined({std::to_string(doses.inhaled), " doses inhaled, ", std::to_string(doses.wasted),
                 " wasted, ", std::to_string(doses.ready), " left loaded; inhale exactly one"})});
  }
}

void check_order_question(const Family& family, const catalog::Question& question,
                          const std::string& pointer, const std::string& file,
                          std::vector<Finding>& findings) {
  const auto constraints = order_constraints(family, question);
  if (!constraints) {
    findings.push_back({file, pointer, constraints.error().code, constraints.error().detail});
    return;
  }
  if (constraints->size() < 2) {
    findings.push_back({file, pointer + "/actions", "order-too-free",
                        joined({"the rules say ", std::to_string(constraints->size()),
                                " things about these cards; at least 2"})});
  }
  std::vector<Id> expected;
  for (const auto& constraint : *constraints) {
    if (catalog::index_of(expected, constraint.technique) < 0)
      expected.push_back(constraint.technique);
  }
  auto given = question.techniques;
  std::sort(given.begin(), given.end());
  std::sort(expected.begin(), expected.end());
  if (given == expected) return;
  std::string names;
  for (const auto& id : expected) names += (names.empty() ? "" : ", ") + id;
  findings.push_back({file, pointer + "/techniques", "order-techniques",
                      "the rules among these cards are of: " + names});
}

// "open < press < open", or nothing.
std::string name_cycle(const Family& family) {
  std::vector<std::pair<int, int>> pairs;
  for (const auto& rule : family.rules) {
    pairs.emplace_back(catalog::index_of(family.actions, rule.before),
                       catalog::index_of(family.actions, rule.after));
    if (pairs.back().first < 0 || pairs.back().second < 0) return {};
  }
  auto cycle = find_cycle(static_cast<int>(family.actions.size()), pairs);
  if (cycle.empty()) return {};
  cycle.push_back(cycle.front());
  std::string names;
  for (const int action : cycle)
    names += (names.empty() ? "" : " < ") + family.actions[static_cast<std::size_t>(action)].id;
  return names;
}

// The wanted steps as actions: what a step ends with comes before the next thing its part does.
std::vector<Id> actions_of_steps(const Family& family, const std::vector<Id>& steps) {
  std::vector<Id> actions;
  Id ends[2];
  for (const Id& id : steps) {
    const auto* step = catalog::find(family.run_through.steps, id);
    if (step == nullptr) return {};
    Id& open = ends[static_cast<std::size_t>(step->part)];
    if (!open.empty()) actions.push_back(open);
    actions.push_back(id);
    open = step->ends;
  }
  for (Id& open : ends) {
    if (!open.empty()) actions.push_back(std::move(open));
  }
  return actions;
}

// `doses` doses inhaled, none wasted, nothing broken.
void check_wanted(const Family& family, const std::vector<Id>& steps, int doses,
                  const Place& place_of_list, std::vector<Finding>& findings) {
  const auto report = run(family, actions_of_steps(family, steps));
  if (steps.empty() || !report) return;
  const auto& state = report->state.doses;
  const bool as_wanted = state.inhaled == doses && state.wasted == 0 && state.ready == 0;
  if (as_wanted && report->lapses.empty()) return;
  const auto says =
      report->lapses.empty()
          ? joined({std::to_string(state.inhaled), " doses inhaled, ", std::to_string(state.wasted),
                    " wasted"})
          : joined({"\"", report->lapses.front().action, "\" ", words(report->lapses.front())});
  findings.push_back({place_of_list.file, place_of_list.pointer, "ideal-run", says});
}

}  // namespace

std::vector<Finding> check_family_runs(const Family& family, const std::string& procedure_path,
                                       const std::string& questions_path) {
  std::vector<Finding> findings;
  check_ideal(family, procedure_path, findings);
  const auto& wanted = family.run_through;
  check_wanted(family, wanted.once, 1, {procedure_path, "/run_through/once"}, findings);
  check_wanted(family, wanted.twice, 2, {procedure_path, "/run_through/twice"}, findings);
  if (const auto cycle = name_cycle(family); !cycle.empty()) {
    findings.push_back(
        {procedure_path, "/rules", "rule-cycle", "each must come before itself: " + cycle});
    return findings;
  }
  for (std::size_t i = 0; i < family.questions.size(); ++i) {
    if (family.questions[i].kind == catalog::Kind::order) {
      check_order_question(family, family.questions[i], place("/questions", i), questions_path,
                           findings);
    }
  }
  return findings;
}

}  // namespace rehale::procedure
