#include "core/rehearsal/offer.h"

#include <algorithm>

#include "core/catalog/lookup.h"
#include "core/procedure/device.h"
#include "core/rehearsal/account.h"

namespace rehale::rehearsal {
namespace {

using catalog::Family;
using catalog::RunStep;

// Where a person is in the wanted list.
struct Progress {
  std::vector<bool> done;  // by place in the list
  int furthest = -1;       // latest place done
  int spent = 0;           // doses inhaled or wasted
};

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// The place of the wanted list that an act of this step fills: one passed over, else the next. A
// step of the second dose counts only when a dose is gone.
int place_of(const std::vector<Id>& wanted, const Progress& progress, const Id& step) {
  int seen = 0;
  for (int n = 0; n < static_cast<int>(wanted.size()); ++n) {
    if (wanted[at(n)] != step) continue;
    if (!progress.done[at(n)]) return seen <= progress.spent ? n : -1;
    ++seen;
  }
  return -1;
}

Progress progress_after(const Family& family, const Take& take, const std::vector<Id>& wanted) {
  Progress progress{std::vector<bool>(wanted.size(), false), -1, 0};
  const auto acts = without_slips(family, take.acts);
  procedure::RunReport report{procedure::start_state(family), {}};
  int last_act = -1;
  for (const Done& one : actions_of(family, acts)) {
    if (one.act > last_act) {  // its start, not its end
      last_act = one.act;
      const int place = place_of(wanted, progress, acts[at(one.act)].step);
      if (place >= 0) {
        progress.done[at(place)] = true;
        progress.furthest = std::max(progress.furthest, place);
      }
    }
    const auto* action = catalog::find(family.actions, one.action);
    if (action != nullptr) procedure::perform(family, *action, 0, report);
    const auto& doses = report.state.doses;
    progress.spent = doses.inhaled + doses.wasted;
  }
  return progress;
}

void add(std::vector<Id>& pads, const Id& step) {
  if (pads.size() < k_most_pads && std::ranges::find(pads, step) == pads.end())
    pads.push_back(step);
}

// Lures with an open window, the latest opened first.
std::vector<Id> lures(const Family& family, const Take& take) {
  const auto last_of = [&](const Id& step) {
    for (int n = static_cast<int>(take.acts.size()); n-- > 0;) {
      if (take.acts[at(n)].step == step) return n;
    }
    return -1;
  };
  std::vector<std::pair<int, Id>> open;
  for (const RunStep& step : family.run_through.steps) {
    if (step.from.empty() && step.until.empty()) continue;
    const int opened = step.from.empty() ? 0 : last_of(step.from);
    const bool shut = !step.until.empty() && last_of(step.until) >= 0;
    const bool again =
        last_of(step.id) == static_cast<int>(take.acts.size()) - 1 && step.from != step.id;
    if (opened >= 0 && !shut && !(again && !take.acts.empty())) open.emplace_back(opened, step.id);
  }
  std::ranges::stable_sort(open, [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<Id> ids;
  ids.reserve(open.size());
  for (auto& [opened, id] : open) ids.push_back(std::move(id));
  return ids;
}

}  // namespace

Offer offer_after(const Family& family, const Take& take) {
  const auto& wanted = wanted_steps(family, take.doses);
  const Progress progress = progress_after(family, take, wanted);
  Offer offer;
  int ahead = 0, behind = 0;
  for (int n = progress.furthest + 1; n < static_cast<int>(wanted.size()) && ahead < 2; ++n) {
    if (progress.done[at(n)]) continue;
    if (offer.next.empty()) offer.next = wanted[at(n)];
    add(offer.pads, wanted[at(n)]);
    ++ahead;
  }
  for (int n = progress.furthest; n >= 0 && behind < 2 && progress.spent < take.doses; --n) {
    if (progress.done[at(n)]) continue;
    add(offer.pads, wanted[at(n)]);
    ++behind;
  }
  for (const Id& lure : lures(family, take)) add(offer.pads, lure);
  // Too few to choose from: what comes later tempts as well.
  for (int n = progress.furthest + 1; n < static_cast<int>(wanted.size()); ++n) {
    if (offer.pads.size() < k_fewest_pads && !progress.done[at(n)]) add(offer.pads, wanted[at(n)]);
  }
  const auto& steps = family.run_through.steps;
  std::ranges::sort(offer.pads, [&](const Id& a, const Id& b) {
    return catalog::index_of(steps, a) < catalog::index_of(steps, b);
  });
  return offer;
}

}  // namespace rehale::rehearsal
