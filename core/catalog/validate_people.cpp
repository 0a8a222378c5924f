#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

void expect_count(const Check& check, std::size_t n, std::size_t low, std::size_t high,
                  const char* what) {
  if (n >= low && n <= high) return;
  check(std::string("/") + what, "count",
        {std::to_string(n), " ", what, "; ", std::to_string(low), " to ", std::to_string(high)});
}

// A critical technique must bear on what the device does or on a number.
bool is_enforced(const Family& family, const Id& technique) {
  const auto of_it = [&](const auto& part) { return part.technique == technique; };
  if (std::any_of(family.rules.begin(), family.rules.end(), of_it)) return true;
  if (std::any_of(family.criteria.begin(), family.criteria.end(), of_it)) return true;
  return std::any_of(family.actions.begin(), family.actions.end(), [&](const Action& action) {
    return std::any_of(action.needs.begin(), action.needs.end(), of_it);
  });
}

void validate_technique(const Check& check, std::size_t i) {
  const auto& all = check.family.techniques;
  const auto& technique = all[i];
  expect_known(check, check.library.shared_techniques, technique.shared,
               at("/techniques", i, "/shared"), "shared-technique");
  const auto same = [&](const Technique& t) { return t.shared == technique.shared; };
  const auto first = std::find_if(all.begin(), all.end(), same) - all.begin();
  if (!technique.shared.empty() && first < static_cast<std::ptrdiff_t>(i))
    check(at("/techniques", i, "/shared"), "duplicate-id", {"another technique shares it already"});
  if (!(technique.weight > 0 && technique.weight <= 1))
    check(at("/techniques", i, "/weight"), "out-of-range", {"above 0, at most 1"});
  if (!(technique.error_rate > 0 && technique.error_rate < 1))
    check(at("/techniques", i, "/error_rate"), "out-of-range", {"between 0 and 1"});
  if (technique.critical && !is_enforced(check.family, technique.id)) {
    check(at("/techniques", i), "critical-not-enforced",
          {"\"", technique.id, "\" is critical: name it in a need, a rule or a criterion"});
  }
  validate_provenance(check, technique.from, at("/techniques", i));
}

void validate_misconception(const Check& check, std::size_t i) {
  const auto& misconception = check.family.misconceptions[i];
  expect_known(check, check.family.techniques, misconception.rules_out,
               at("/misconceptions", i, "/rules_out"), "technique");
  expect_known(check, check.library.families, misconception.carried_from,
               at("/misconceptions", i, "/carried_from"), "family");
  if (!(misconception.share > 0 && misconception.share < 1))
    check(at("/misconceptions", i, "/share"), "out-of-range", {"between 0 and 1"});
  validate_provenance(check, misconception.from, at("/misconceptions", i));
}

}  // namespace

void validate_people(const Check& check) {
  const auto& family = check.family;
  expect_count(check, family.techniques.size(), 8, 12, "techniques");
  expect_count(check, family.misconceptions.size(), 2, 4, "misconceptions");
  expect_unique(check, family.techniques, "/techniques");
  expect_unique(check, family.misconceptions, "/misconceptions");
  for (std::size_t i = 0; i < family.techniques.size(); ++i) validate_technique(check, i);
  for (std::size_t i = 0; i < family.misconceptions.size(); ++i) validate_misconception(check, i);
}

}  // namespace rehale::catalog
