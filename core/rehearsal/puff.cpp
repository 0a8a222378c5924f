#include "core/rehearsal/puff.h"

#include <algorithm>
#include <cmath>

#include "core/catalog/lookup.h"

namespace rehale::rehearsal {
namespace {

using catalog::DoseRole;
using catalog::Family;

constexpr double k_half_covered = .5;
constexpr double k_ms_per_s = 1000;

DoseRole role_of(const Family& family, const Act& act) {
  const auto* step = catalog::find(family.run_through.steps, act.step);
  return step == nullptr ? DoseRole::none : step->role;
}

bool is_breath(DoseRole role) { return role == DoseRole::inhale || role == DoseRole::inhale_weak; }

double lasts_s(const Act& act) { return (act.end_ms - act.start_ms) / k_ms_per_s; }

const Act* first_of(const Family& family, const Account& account, DoseRole role) {
  const auto found = std::ranges::find_if(
      account.acts, [&](const Act& act) { return role_of(family, act) == role; });
  return found == account.acts.end() ? nullptr : &*found;
}

// The breath that took the dose: the one nearest to the press; without a press the first.
const Act* breath_of(const Family& family, const Account& account, const Act* press) {
  const Act* nearest = nullptr;
  double least = 0;
  for (const Act& act : account.acts) {
    if (!is_breath(role_of(family, act))) continue;
    const double away = press == nullptr ? 0 : std::abs(act.start_ms - press->start_ms);
    const bool within =
        press != nullptr && press->start_ms >= act.start_ms && press->start_ms < act.end_ms;
    if (within) return &act;
    if (nearest == nullptr || away < least) {
      nearest = &act;
      least = away;
    }
  }
  return nearest;
}

bool was_blocked(const Account& account, const Act* act) {
  return std::ranges::any_of(account.report.lapses, [&](const auto& lapse) {
    const auto& done = account.done[static_cast<std::size_t>(lapse.index)];
    return lapse.blocked && &account.acts[static_cast<std::size_t>(done.act)] == act;
  });
}

// What was done to the device before the breath ended.
void add_handling(const Family& family, const Account& account, const Act* press, const Act* breath,
                  dose::Technique& puff) {
  puff.shaken = false;
  for (const Act& act : account.acts) {
    const DoseRole role = role_of(family, act);
    if (role == DoseRole::shake && (press == nullptr || act.start_ms <= press->start_ms))
      puff.shaken = true;
    if (breath == nullptr || act.start_ms > breath->start_ms) continue;
    if (role == DoseRole::into) puff.breathed_into_device = true;
    if (role == DoseRole::tilt) puff.tilted = true;
    if (role == DoseRole::cover_vents) puff.vents_covered = k_half_covered;
    if (role == DoseRole::clear_vents) puff.vents_covered = 0;
  }
}

// How long it took tells how fast, when the breath is as deep as a good one. The force of a strong
// breath cannot be timed: there the time tells how much was drawn.
void add_breath(const Act& breath, bool weak_or_pressed, dose::Technique& puff) {
  const double s = lasts_s(breath);
  if (weak_or_pressed) {
    puff.flow_l_per_min = dose::mean_flow_l_per_min(puff.inspired_ml, s);
    return;
  }
  const double drawn_ml = puff.flow_l_per_min / .06 * s;
  puff.inspired_ml = dose::k_inspired_ml.clamp(std::min(puff.inspired_ml, drawn_ml));
}

}  // namespace

dose::Technique first_puff(const Family& family, const Account& account, dose::Device device) {
  dose::Technique puff = dose::good_technique(device);
  const Act* press = first_of(family, account, DoseRole::press);
  const Act* breath = breath_of(family, account, press);
  const Act* hold = first_of(family, account, DoseRole::hold);
  const auto& doses = account.report.state.doses;
  const bool spent = doses.inhaled + doses.wasted > 0;
  const bool pressed = dose::is_pressed(device);
  puff.hold_s = hold == nullptr ? 0 : dose::k_hold_s.clamp(lasts_s(*hold));
  puff.released =
      spent && (pressed ? press != nullptr : breath != nullptr && !was_blocked(account, breath));
  if (breath != nullptr) {
    const bool weak = role_of(family, *breath) == DoseRole::inhale_weak;
    add_breath(*breath, weak || pressed, puff);
  }
  if (pressed && press != nullptr) {
    // No breath at all: the cloud waits as long as the model can say.
    puff.press_s = breath == nullptr
                       ? dose::k_press_s.low
                       : dose::k_press_s.clamp((press->start_ms - breath->start_ms) / k_ms_per_s);
  }
  add_handling(family, account, press, breath, puff);
  puff.loaded_twice = !pressed && doses.wasted > 0 && doses.inhaled > 0;
  return puff;
}

}  // namespace rehale::rehearsal
