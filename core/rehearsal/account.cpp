#include "core/rehearsal/account.h"

#include <algorithm>
#include <utility>

#include "core/catalog/lookup.h"
#include "core/rehearsal/measure.h"

namespace rehale::rehearsal {
namespace {

using catalog::Family;
using catalog::Part;
using catalog::RunStep;
using procedure::Lapse;

int count_of(const std::vector<Act>& acts, const Id& step) {
  return static_cast<int>(std::ranges::count(acts, step, &Act::step));
}

bool is_missed(const std::vector<Finding>& findings, const Id& technique) {
  return std::ranges::any_of(findings, [&](const Finding& finding) {
    return !finding.met && finding.technique == technique;
  });
}

void add_lapses(const Account& account, std::vector<Finding>& findings) {
  for (const Lapse& lapse : account.report.lapses) {
    if (lapse.technique.empty()) continue;
    Finding finding;
    finding.why = lapse.kind == Lapse::Kind::rule_broken   ? Why::order
                  : lapse.kind == Lapse::Kind::need_broken ? Why::need
                                                           : Why::waste;
    finding.technique = lapse.technique;
    finding.misconception = lapse.misconception;
    finding.act = account.done[static_cast<std::size_t>(lapse.index)].act;
    finding.step = account.acts[static_cast<std::size_t>(finding.act)].step;
    finding.rule = lapse.rule;
    finding.variable = lapse.variable;
    findings.push_back(std::move(finding));
  }
}

void add_betrayed(const Family& family, const std::vector<Act>& acts,
                  std::vector<Finding>& findings) {
  for (std::size_t n = 0; n < acts.size(); ++n) {
    const RunStep* step = catalog::find(family.run_through.steps, acts[n].step);
    const auto* held = catalog::find(family.misconceptions, step->betrays);
    if (held == nullptr) continue;
    Finding finding;
    finding.why = Why::betrayed;
    finding.technique = held->rules_out;
    finding.misconception = held->id;
    finding.step = step->id;
    finding.act = static_cast<int>(n);
    findings.push_back(std::move(finding));
  }
}

// Whether the step at this place of the wanted list was done: the k-th of its kind by the k-th act.
bool is_done(const std::vector<Id>& wanted, std::size_t place, const std::vector<Act>& acts) {
  const auto end = wanted.begin() + static_cast<std::ptrdiff_t>(place) + 1;
  return count_of(acts, wanted[place]) >= std::count(wanted.begin(), end, wanted[place]);
}

// A wanted step counts as left out once something after it was done or all doses are spent. Where
// its technique lapsed in another way already, that says more.
void add_left_out(const Family& family, const Take& take, const Account& account,
                  std::vector<Finding>& findings) {
  const auto& wanted = wanted_steps(family, take.doses);
  const auto& doses = account.report.state.doses;
  bool passed = doses.inhaled + doses.wasted >= take.doses;
  std::vector<Finding> found;
  for (std::size_t n = wanted.size(); n-- > 0;) {
    if (is_done(wanted, n, account.acts)) {
      passed = true;
      continue;
    }
    const RunStep* step = catalog::find(family.run_through.steps, wanted[n]);
    if (!passed || step->technique.empty() || is_missed(findings, step->technique)) continue;
    Finding finding;
    finding.why = Why::left_out;
    finding.technique = step->technique;
    finding.step = step->id;
    found.push_back(std::move(finding));
  }
  std::ranges::reverse(found);
  findings.insert(findings.end(), found.begin(), found.end());
}

// Missed by any finding; met by a criterion or a wanted step of the technique that was done.
std::vector<Shown> shown_by(const Family& family, const Take& take, const Account& account) {
  std::vector<Shown> shown;
  const auto& wanted = wanted_steps(family, take.doses);
  for (std::size_t t = 0; t < family.techniques.size(); ++t) {
    const Id& id = family.techniques[t].id;
    const bool missed = is_missed(account.findings, id);
    const bool measured = std::ranges::any_of(
        account.findings, [&](const Finding& f) { return f.met && f.technique == id; });
    const bool done = std::ranges::any_of(wanted, [&](const Id& step) {
      return catalog::find(family.run_through.steps, step)->technique == id &&
             count_of(account.acts, step) > 0;
    });
    if (missed || measured || done) shown.push_back({static_cast<int>(t), !missed});
  }
  return shown;
}

}  // namespace

const std::vector<Id>& wanted_steps(const Family& family, int doses) {
  const auto& run = family.run_through;
  return doses > 1 && !run.twice.empty() ? run.twice : run.once;
}

std::vector<Done> actions_of(const Family& family, const std::vector<Act>& acts) {
  enum : int { breath_ends, breath_starts, hands };
  std::vector<std::pair<int, Done>> ranked;
  for (std::size_t n = 0; n < acts.size(); ++n) {
    const Act& act = acts[n];
    const RunStep* step = catalog::find(family.run_through.steps, act.step);
    const int place = static_cast<int>(n);
    ranked.push_back({step->part == Part::breath ? breath_starts : hands,
                      {step->id, place, place_ms(family, acts, act)}});
    if (step->ends.empty()) continue;
    const bool cut = !step->cut_short.empty() && stopped_short(family, act);
    // One of no length ends after it started.
    ranked.push_back({act.end_ms > act.start_ms ? breath_ends : breath_starts,
                      {cut ? step->cut_short : step->ends, place, act.end_ms}});
  }
  std::ranges::stable_sort(ranked, [](const auto& a, const auto& b) {
    return std::pair(a.second.at_ms, a.first) < std::pair(b.second.at_ms, b.first);
  });
  std::vector<Done> done;
  done.reserve(ranked.size());
  for (auto& [rank, one] : ranked) done.push_back(std::move(one));
  return done;
}

Result<Account> account_of(const Family& family, const Take& take) {
  if (family.run_through.steps.empty())
    return fail("no-run-through", family.id, "this family has no run-through");
  if (auto checked = check_take(family, take); !checked) return tl::unexpected(checked.error());
  Account account;
  account.acts = without_slips(family, take.acts);
  account.done = actions_of(family, account.acts);
  std::vector<Id> actions;
  actions.reserve(account.done.size());
  for (const Done& one : account.done) actions.push_back(one.action);
  auto report = procedure::run(family, actions);
  if (!report) return tl::unexpected(report.error());
  account.report = *std::move(report);
  account.findings = measure_all(family, account.acts);
  add_lapses(account, account.findings);
  add_betrayed(family, account.acts, account.findings);
  add_left_out(family, take, account, account.findings);
  account.shown = shown_by(family, take, account);
  return account;
}

}  // namespace rehale::rehearsal
