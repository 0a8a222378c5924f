#include <tuple>

#include "core/catalog/read_parts.h"

namespace rehale::catalog {
namespace {

Variable read_variable(const Reader& place) {
  place.allow_only({"id", "values"});
  return {place.id("id"), place.ids("values")};
}

Need read_need(const Reader& place) {
  place.allow_only({"variable", "any_of", "technique", "blocks"});
  return {place.id("variable"), place.ids("any_of"), place.id("technique"),
          place.flag_or_no("blocks")};
}

// {"cap":"off","lungs":"full"}
std::vector<Setting> read_settings(const Reader& effect, std::string_view key) {
  std::vector<Setting> settings;
  if (!effect.has(key)) return settings;
  const auto place = effect.at(key);
  const auto* object = place.expect(Json::Type::object);
  if (object == nullptr) return settings;
  for (const auto& variable : object->keys) settings.push_back({variable, place.id(variable)});
  return settings;
}

DoseChange read_dose(const Reader& effect) {
  const auto name = effect.id_or_none("dose");
  if (name == "load") return DoseChange::load;
  if (name == "inhale") return DoseChange::inhale;
  if (name == "waste") return DoseChange::waste;
  if (!name.empty()) effect.at("dose").finding("unknown-dose", {"use load, inhale or waste"});
  return DoseChange::none;
}

Effect read_effect(const Reader& place) {
  place.allow_only({"when", "set", "dose", "technique"});
  return {read_settings(place, "when"), read_settings(place, "set"), read_dose(place),
          place.id_or_none("technique")};
}

Action read_action(const Reader& place) {
  place.allow_only({"id", "pose", "needs", "effects"});
  Action action{place.id("id"), {}, {}, place.ids_or_none("pose")};
  for (const auto& need : place.list_or_none("needs")) action.needs.push_back(read_need(need));
  for (const auto& effect : place.list_or_none("effects"))
    action.effects.push_back(read_effect(effect));
  return action;
}

OrderRule read_rule(const Reader& place) {
  place.allow_only({"id", "before", "after", "technique", "misconception", "sources", "status"});
  return {place.id("id"),
          place.id("before"),
          place.id("after"),
          place.id("technique"),
          place.id_or_none("misconception"),
          read_provenance(place)};
}

Technique read_technique(const Reader& place) {
  place.allow_only({"id", "shared", "critical", "weight", "error_rate", "sources", "status"});
  return {place.id("id"),         place.id_or_none("shared"), place.flag_or_no("critical"),
          place.number("weight"), place.number("error_rate"), read_provenance(place)};
}

Misconception read_misconception(const Reader& place) {
  place.allow_only({"id", "rules_out", "share", "carried_from", "sources", "status"});
  return {place.id("id"), place.id("rules_out"), place.number("share"),
          place.id_or_none("carried_from"), read_provenance(place)};
}

DoseModel read_dose_model(const Reader& place) {
  place.allow_only({"device", "habits", "sources"});
  DoseModel model{place.id("device"), {}, {}};
  for (const auto& habit : place.list("habits")) {
    habit.allow_only({"habit", "change", "value", "sources", "status"});
    model.habits.push_back({habit.id("habit"), habit.id("change"), habit.number_or("value", 0),
                            read_provenance(habit)});
  }
  for (const auto& source : place.list("sources")) {
    const auto* found = source.expect(Json::Type::text);
    if (found != nullptr) model.sources.push_back(found->text);
  }
  return model;
}

}  // namespace

Provenance read_provenance(const Reader& place) {
  Provenance from;
  for (const auto& source : place.list("sources")) {
    const auto* found = source.expect(Json::Type::text);
    from.sources.push_back(found != nullptr ? found->text : Id{});
  }
  from.status = place.text("status");
  return from;
}

Criterion read_criterion(const Reader& place) {
  place.allow_only({"id", "action", "technique", "unit", "target", "pass", "sources", "status"});
  Criterion criterion;
  criterion.id = place.text("id");  // as in the facts sheet, so '_' may be in it
  criterion.action = place.id_or_none("action");
  criterion.technique = place.id_or_none("technique");
  criterion.unit = place.text("unit");
  std::tie(criterion.target_low, criterion.target_high) = place.span_or_none("target");
  std::tie(criterion.pass_low, criterion.pass_high) = place.span_or_none("pass");
  criterion.from = read_provenance(place);
  return criterion;
}

void check_head(const Reader& root) {
  if (root.whole("schema") != k_schema) {
    root.at("schema").finding("unknown-schema",
                              {"this program reads schema ", std::to_string(k_schema)});
  }
}

void check_named(const Reader& root, std::string_view key, const Id& expected) {
  const auto name = root.id(key);
  if (name != expected) {
    root.at(key).finding("wrong-file", {"says \"", name, "\"; this file is of \"", expected, "\""});
  }
}

void read_procedure(const Reader& root, Family& family) {
  root.allow_only({"schema", "family", "speed", "doses_at_start", "variables", "actions", "ideal",
                   "rules", "criteria", "run_through", "techniques", "misconceptions", "dose"});
  check_head(root);
  check_named(root, "family", family.id);
  family.speed = root.id("speed");
  family.doses_at_start = root.whole("doses_at_start");
  for (const auto& place : root.list("variables")) family.variables.push_back(read_variable(place));
  for (const auto& place : root.list("actions")) family.actions.push_back(read_action(place));
  family.ideal = root.ids("ideal");
  for (const auto& place : root.list("rules")) family.rules.push_back(read_rule(place));
  for (const auto& place : root.list("criteria")) family.criteria.push_back(read_criterion(place));
  if (root.has("run_through")) read_run_through(root.at("run_through"), family.run_through);
  for (const auto& place : root.list("techniques"))
    family.techniques.push_back(read_technique(place));
  for (const auto& place : root.list("misconceptions"))
    family.misconceptions.push_back(read_misconception(place));
  if (root.has("dose")) family.dose = read_dose_model(root.at("dose"));
}

}  // namespace rehale::catalog
