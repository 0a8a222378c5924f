// The virtual device: a family's actions run on its state. A list of actions in, what came of it
// out. Must not know questions, people or drawings.
#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"

namespace rehale::procedure {

// left + ready + inhaled + wasted = doses at start, always.
struct Doses {
  int left = 0;   // in the device, not loaded: what a counter shows
  int ready = 0;  // loaded, 0 or 1
  int inhaled = 0, wasted = 0;
  bool operator==(const Doses&) const = default;
};

struct DeviceState {
  std::vector<int> values;  // for each variable of the family, the index of its value
  Doses doses;
  bool operator==(const DeviceState&) const = default;
};

struct Lapse {
  enum class Kind : unsigned char {
    need_broken,  // `variable` was not as the action needs it
    rule_broken,  // `rule`: the action came before one that should come first
    dose_wasted,  // a ready dose was lost
  };
  Kind kind = Kind::need_broken;
  int index = 0;                    // of the action in the list given
  catalog::Id action, technique;    // technique may be empty (a waste nobody is blamed for)
  catalog::Id variable;             // need_broken
  catalog::Id rule, misconception;  // rule_broken
  bool blocked = false;             // need_broken: and the action had no effect
};

struct RunReport {
  DeviceState state;
  std::vector<Lapse> lapses;  // by index; within one action needs, then rules, then waste
};

// Every variable at its first value, doses_at_start doses left.
[[nodiscard]] DeviceState start_state(const catalog::Family& family);

// One action. A broken need that blocks keeps all effects from happening; every broken need is a
// lapse (index as given). Effects whose `when` holds before the action happen in order. Doses: load
// moves one from left to ready (a ready one is wasted first; nothing happens at 0 left); inhale and
// waste take the ready one (nothing happens without one).
void perform(const catalog::Family& family, const catalog::Action& action, int index,
             RunReport& report);

// All actions from the start state, plus order rules. A run is cut into dose cycles: once the
// cycle's dose is spent (inhaled or wasted), the first action that the cycle has had already opens
// the next. Within a cycle a rule before < after is broken when both occur and the first `after`
// comes ahead of the first `before`; it is reported once, at that `after`. Leaving an action out
// breaks no rule (needs tell that), and an attempt that was blocked counts: it is the order the
// person chose. Error "unknown-action" (where: index in the list).
[[nodiscard]] Result<RunReport> run(const catalog::Family& family,
                                    std::span<const catalog::Id> actions);

}  // namespace rehale::procedure
