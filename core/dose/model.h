// One puff through the published models: technique in, where the medicine went out.
// Must not know: content, texts, screens.
#pragma once

#include "core/base/result.h"
#include "core/dose/technique.h"

namespace rehale::dose {

// Error "outside-range" (where = name of the number) when one is outside its range or not finite.
// Allocates nothing unless it is an error.
[[nodiscard]] Result<Outcome> estimate(const Technique& technique);

}  // namespace rehale::dose
