#include "core/rehearsal/evidence.h"

#include <algorithm>

#include "core/catalog/lookup.h"

namespace rehale::rehearsal {
namespace {

using catalog::Family;

void note(std::vector<int>& seen, const Family& family, const Id& misconception,
          const Id& technique) {
  const int index = catalog::index_of(family.misconceptions, misconception);
  if (index < 0 || family.misconceptions[static_cast<std::size_t>(index)].rules_out != technique)
    return;
  if (std::ranges::find(seen, index) == seen.end()) seen.push_back(index);
}

// The one misconception against the technique that a run-through can betray; -1: none or several.
int betrayable(const Family& family, const Id& technique) {
  const auto& steps = family.run_through.steps;
  std::vector<int> seen;
  for (const auto& step : steps) note(seen, family, step.betrays, technique);
  for (const auto& rule : family.rules) {
    const bool can_break =
        catalog::index_of(steps, rule.before) >= 0 && catalog::index_of(steps, rule.after) >= 0;
    if (can_break) note(seen, family, rule.misconception, technique);
  }
  return seen.size() == 1 ? seen.front() : -1;
}

}  // namespace

Result<std::vector<Evidence>> evidence_of(const mastery::Model& model, const Family& family,
                                          const Take& take, const Account& account) {
  std::vector<Evidence> all;
  if (take.guided) return all;
  const int techniques = static_cast<int>(family.techniques.size());
  for (const Shown& shown : account.shown) {
    const auto& id = family.techniques[static_cast<std::size_t>(shown.technique)].id;
    const int held = betrayable(family, id);
    auto piece = mastery::mark_piece(
        model, {mastery::bit(shown.technique), held < 0 ? -1 : techniques + held});
    if (!piece) return tl::unexpected(piece.error());
    all.push_back(
        {shown.technique, *std::move(piece), shown.met ? mastery::k_met : mastery::k_missed});
  }
  return all;
}

}  // namespace rehale::rehearsal
