// What a run-through shows: the device run on the order chosen, the times beside the family's
// criteria, what was left out. A pure fold of the log. Must not know texts or screens.
#pragma once

#include <optional>
#include <vector>

#include "core/procedure/device.h"
#include "core/rehearsal/take.h"

namespace rehale::rehearsal {

// One action of the device as it came about, and the act (after slips) it belongs to.
struct Done {
  Id action;
  int act = 0;
  double at_ms = 0;
};

enum class Why : unsigned char {
  measured,  // a time or a count beside its criterion: met or not
  order,     // an order rule broke
  left_out,  // a wanted step was not done
  betrayed,  // a step was chosen that shows a misconception
  need,      // the device was not as the action needs it
  waste,     // a dose was lost
};

struct Finding {
  Why why = Why::measured;
  bool met = false;  // only `measured` can be
  Id technique;      // never empty
  Id misconception;  // betrayed; may be empty
  Id step;           // run-through step
  int act = -1;      // place in Account::acts; -1: left out
  // measured
  Id criterion;
  double value = 0;       // in the criterion's unit
  double beyond = 0;      // by how much it is outside `pass`: < 0 too little, > 0 too much
  bool forgiven = false;  // outside `pass`, within the tolerance
  Id rule;                // order
  Id variable;            // need
};

// Of a technique that the run-through had something to say about.
struct Shown {
  int technique = 0;  // index in the family
  bool met = false;
};

struct Account {
  std::vector<Act> acts;  // after slips
  std::vector<Done> done;
  procedure::RunReport report;  // of procedure::run on the actions of `done`
  std::vector<Finding> findings;
  std::vector<Shown> shown;  // by technique
};

// Errors: those of check_take; "no-run-through" when the family has none.
[[nodiscard]] Result<Account> account_of(const catalog::Family& family, const Take& take);

// The actions that acts (slips joined) come to, in order of time. What lasts and has an `ends` is
// two actions; at one and the same ms a breath's end comes first, then a breath's start, then
// hands.
[[nodiscard]] std::vector<Done> actions_of(const catalog::Family& family,
                                           const std::vector<Act>& acts);

// What a timed step aims at, s: the middle of its criterion's target; nothing: no criterion.
[[nodiscard]] std::optional<double> aim_s(const catalog::Family& family, const Id& step);

// Steps the run-through wants, for this many doses.
[[nodiscard]] const std::vector<Id>& wanted_steps(const catalog::Family& family, int doses);

}  // namespace rehale::rehearsal
