// How a shipped run asks. Must not know content.
#pragma once

#include "core/mastery/diagnosis.h"

namespace rehale::check {

// Two questions beyond the least, so that habits which are no checklist's critical step, but the
// most often missed (breathing out, holding), are looked at too.
inline constexpr mastery::Plan k_plan{.fewest = 8, .near_recent = .6};

}  // namespace rehale::check
