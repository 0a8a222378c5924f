#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

constexpr std::size_t k_most_actions = 32;  // core/procedure keeps sets of them as bits

void expect_setting(const Check& check, const Setting& setting, const std::string& pointer) {
  const auto* variable = find(check.family.variables, setting.variable);
  if (variable == nullptr) {
    check(pointer, "unknown-variable", {"there is no variable \"", setting.variable, "\""});
  } else {
    expect_known(check, variable->values, setting.value, pointer, "value");
  }
}

void validate_variables(const Check& check) {
  const auto& variables = check.family.variables;
  expect_unique(check, variables, "/variables");
  for (std::size_t i = 0; i < variables.size(); ++i) {
    const auto pointer = at("/variables", i, "/values");
    expect_unique(check, variables[i].values, pointer);
    if (variables[i].values.size() < 2)
      check(pointer, "too-few-values", {"a variable needs two values; the first is at rest"});
  }
}

void validate_need(const Check& check, const Need& need, const std::string& pointer) {
  expect_known(check, check.family.techniques, need.technique, pointer + "/technique", "technique");
  if (need.any_of.empty())
    check(pointer + "/any_of", "too-few-values", {"name the values allowed"});
  const auto* variable = find(check.family.variables, need.variable);
  if (variable == nullptr) {
    return expect_known(check, check.family.variables, need.variable, pointer + "/variable",
                        "variable");
  }
  for (std::size_t i = 0; i < need.any_of.size(); ++i)
    expect_known(check, variable->values, need.any_of[i], at(pointer + "/any_of", i), "value");
}

void validate_effect(const Check& check, const Effect& effect, const std::string& pointer) {
  for (const auto& setting : effect.when)
    expect_setting(check, setting, pointer + "/when/" + pointer_token(setting.variable));
  for (const auto& setting : effect.set)
    expect_setting(check, setting, pointer + "/set/" + pointer_token(setting.variable));
  expect_known(check, check.family.techniques, effect.technique, pointer + "/technique",
               "technique");
  const bool dose_meant = check.report.bad_form(check.file, pointer + "/dose");
  if (effect.set.empty() && effect.dose == DoseChange::none && !dose_meant)
    check(pointer, "empty-effect", {"an effect needs \"set\" or \"dose\""});
}

void validate_actions(const Check& check) {
  const auto& actions = check.family.actions;
  expect_unique(check, actions, "/actions");
  if (actions.empty() || actions.size() > k_most_actions) {
    check("/actions", "action-count",
          {std::to_string(actions.size()), " actions; 1 to ", std::to_string(k_most_actions)});
  }
  for (std::size_t i = 0; i < actions.size(); ++i) {
    for (std::size_t k = 0; k < actions[i].needs.size(); ++k)
      validate_need(check, actions[i].needs[k], at(at("/actions", i, "/needs"), k));
    for (std::size_t k = 0; k < actions[i].effects.size(); ++k)
      validate_effect(check, actions[i].effects[k], at(at("/actions", i, "/effects"), k));
  }
  const auto& ideal = check.family.ideal;
  if (ideal.empty()) check("/ideal", "ideal-run", {"list the actions of one dose done well"});
  for (std::size_t i = 0; i < ideal.size(); ++i)
    expect_known(check, actions, ideal[i], at("/ideal", i), "action");
}

void validate_rules(const Check& check) {
  const auto& family = check.family;
  expect_unique(check, family.rules, "/rules");
  for (std::size_t i = 0; i < family.rules.size(); ++i) {
    const auto& rule = family.rules[i];
    expect_known(check, family.actions, rule.before, at("/rules", i, "/before"), "action");
    expect_known(check, family.actions, rule.after, at("/rules", i, "/after"), "action");
    expect_known(check, family.techniques, rule.technique, at("/rules", i, "/technique"),
                 "technique");
    const auto pointer = at("/rules", i, "/misconception");
    expect_known(check, family.misconceptions, rule.misconception, pointer, "misconception");
    const auto* held = find(family.misconceptions, rule.misconception);
    if (held != nullptr && held->rules_out != rule.technique) {
      check(pointer, "misconception-mismatch",
            {"it rules out \"", held->rules_out, "\", the rule is of \"", rule.technique, "\""});
    }
    validate_provenance(check, rule.from, at("/rules", i));
  }
}

void validate_criteria(const Check& check) {
  const auto& family = check.family;
  expect_unique(check, family.criteria, "/criteria");
  for (std::size_t i = 0; i < family.criteria.size(); ++i) {
    const auto& criterion = family.criteria[i];
    expect_known(check, family.actions, criterion.action, at("/criteria", i, "/action"), "action");
    expect_known(check, family.techniques, criterion.technique, at("/criteria", i, "/technique"),
                 "technique");
    validate_criterion(check, criterion, at("/criteria", i));
  }
}

}  // namespace

void validate_provenance(const Check& check, const Provenance& from, const std::string& pointer) {
  for (std::size_t i = 0; i < from.sources.size(); ++i) {
    if (!check.library.sources.contains(from.sources[i])) {
      check(at(pointer + "/sources", i), "unknown-source",
            {"\"", from.sources[i], "\" is not among the sources of library.json"});
    }
  }
  const bool read = from.status == "R" || from.status == "R2";
  if (!read && from.status != "M" && from.status != "CP" && from.status != "D")
    check(pointer + "/status", "unknown-status", {"use R, R2, M, CP or D"});
  if (read && from.sources.empty())
    check(pointer + "/sources", "source-needed", {"status ", from.status, " needs a source"});
}

void validate_criterion(const Check& check, const Criterion& criterion,
                        const std::string& pointer) {
  const auto& c = criterion;
  if (c.target_low && c.target_high && *c.target_low > *c.target_high)
    check(pointer + "/target", "upside-down", {"the lowest comes first"});
  if (c.pass_low && c.pass_high && *c.pass_low > *c.pass_high)
    check(pointer + "/pass", "upside-down", {"the lowest comes first"});
  const bool any_pass = c.pass_low || c.pass_high;
  const bool below = c.pass_low && c.target_low && *c.target_low < *c.pass_low;
  const bool above = c.pass_high && c.target_high && *c.target_high > *c.pass_high;
  if (any_pass && (below || above))
    check(pointer + "/target", "target-outside-pass", {"what is aimed for must count as right"});
  validate_provenance(check, c.from, pointer);
}

void validate_procedure(const Check& check) {
  if (check.family.speed != "slow" && check.family.speed != "fast")
    check("/speed", "unknown-speed", {"use slow or fast"});
  if (check.family.doses_at_start < 1) check("/doses_at_start", "out-of-range", {"at least 1"});
  validate_variables(check);
  validate_actions(check);
  validate_rules(check);
  validate_criteria(check);
  validate_dose(check);
}

}  // namespace rehale::catalog
