// Times and counts of acts beside the family's criteria. Internal to core/rehearsal.
#pragma once

#include "core/rehearsal/account.h"

namespace rehale::rehearsal {

// One finding for each act that a timed criterion can be read off; acts by start, slips joined.
[[nodiscard]] std::vector<Finding> measure_all(const catalog::Family& family,
                                               const std::vector<Act>& acts);

// Whether a step that lasts stopped short of its criterion, tolerance counted.
[[nodiscard]] bool stopped_short(const catalog::Family& family, const Act& act);

// When an act starts, as the device is told: one that came before the `of` it should come after,
// but within the tolerance, counts as at the same time.
[[nodiscard]] double place_ms(const catalog::Family& family, const std::vector<Act>& acts,
                              const Act& act);

}  // namespace rehale::rehearsal
