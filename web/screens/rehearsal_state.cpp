#include "web/screens/rehearsal_state.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/catalog/lookup.h"

namespace rehale::screens {

using catalog::Id;
using catalog::RunStep;

void Rehearsal::start(const catalog::Family& family, std::string content, double now_ms) {
  family_ = &family;
  take_ = {family.id, std::move(content), guided, two ? 2 : 1, {}};
  began_ms_ = now_ms;
  running_ = -1;
  offer_ = rehearsal::offer_after(family, take_);
  phase_ = Phase::acting;
  ++tries_;
}

const RunStep& Rehearsal::step(const Id& id) const {
  return *catalog::find(family_->run_through.steps, id);
}

double Rehearsal::since_start(double now_ms) const {
  const double last = take_.acts.empty() ? 0 : take_.acts.back().start_ms;
  return std::max(last, std::round(now_ms - began_ms_));
}

const rehearsal::Act* Rehearsal::running() const {
  return running_ < 0 ? nullptr : &take_.acts[static_cast<std::size_t>(running_)];
}

double Rehearsal::elapsed_ms(double now_ms) const {
  return running_ < 0 ? 0 : std::max(0.0, now_ms - began_ms_ - running()->start_ms);
}

void Rehearsal::stop(double now_ms) {
  if (running_ < 0) return;
  rehearsal::Act& act = take_.acts[static_cast<std::size_t>(running_)];
  const double longest = act.start_ms + rehearsal::k_longest_act_ms;
  act.end_ms = std::clamp(std::round(now_ms - began_ms_), act.start_ms, longest);
  running_ = -1;
  offer_ = rehearsal::offer_after(*family_, take_);
}

void Rehearsal::skip(double now_ms) {
  const int wait = running_;
  stop(now_ms);
  if (wait >= 0) take_.acts[static_cast<std::size_t>(wait)].skipped = true;
}

void Rehearsal::choose(const Id& id, double now_ms) {
  if (running_ >= 0 && running()->step == id) return stop(now_ms);
  if (take_.acts.size() >= rehearsal::k_most_acts) return;
  if (running_ >= 0 && step(running()->step).part == step(id).part) stop(now_ms);
  const double now = since_start(now_ms);
  take_.acts.push_back({id, now, now});
  if (step(id).timed && running_ < 0) running_ = static_cast<int>(take_.acts.size()) - 1;
  offer_ = rehearsal::offer_after(*family_, take_);
}

void Rehearsal::finish(double now_ms) {
  stop(now_ms);
  account_ = {};
  if (auto account = rehearsal::account_of(*family_, take_)) account_ = *std::move(account);
  phase_ = Phase::told;
}

// What can be done during a breath in: instant things of the hands, as the press.
std::vector<Id> Rehearsal::on_screen() const {
  const rehearsal::Act* now = running();
  if (now == nullptr) return offer_.pads;
  std::vector<Id> ids{now->step};
  if (step(now->step).ends.empty()) return ids;
  for (const Id& id : offer_.pads) {
    if (step(id).part == catalog::Part::hands && !step(id).timed) ids.push_back(id);
  }
  return ids;
}

}  // namespace rehale::screens
