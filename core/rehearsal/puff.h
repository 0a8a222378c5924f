// A run-through as what the dose model takes: the technique of its first dose.
#pragma once

#include "core/dose/technique.h"
#include "core/rehearsal/account.h"

namespace rehale::rehearsal {

// What was timed or chosen stands in it; what was not is as in dose::good_technique(device): the
// size of the breath, and for powders its force (a clock cannot tell it; a breath chosen weak has
// the volume spread over its time). A press nobody made, or a powder no breath drew: released is
// false. Covered vents count as half covered (an assumption). All numbers lie in the model's
// ranges.
[[nodiscard]] dose::Technique first_puff(const catalog::Family& family, const Account& account,
                                         dose::Device device);

}  // namespace rehale::rehearsal
