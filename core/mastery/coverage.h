// Which critical techniques still need a real question, and whether they all fit the slots left.
// Numbers only; used by Diagnosis alone.
#pragma once

#include <span>
#include <vector>

#include "core/mastery/model.h"

namespace rehale::mastery {

// The fewest items that bring every technique to its target, and the items that are a step of such
// a plan. Techniques that one item can cover: exact set cover (bitmask DP). Those that need
// several: their best items, counted on top, so the plan is never too short.
struct Cover {
  int fewest = 0;             // 0: nothing left that can be covered
  std::vector<bool> is_step;  // item: does asking it shorten the plan?
};

// missing: nats still to be told about each technique, > 0. offers: what each item not yet asked
// would add, [item][technique]. A technique that all offers together cannot cover is left out of
// the plan.
[[nodiscard]] Cover plan_cover(std::span<const double> missing, std::span<const double> offers);

}  // namespace rehale::mastery
