// One puff through the published models: technique in, where the medicine went out.
// Must not know: content, texts, screens.
#pragma once

#include "core/base/result.h"
#include "core/dose/technique.h"

namespace rehale::dose {

// Error "outside-range" (where = name of the number) when one is outside its range or not finite.
// Allocates nothing unless it is an error. The band: the spread of the four mouth-throat curves and
// that of people around the calibrated middle, in quadrature (a choice).
[[nodiscard]] Result<Outcome> estimate(const Technique& technique);

// Lung dose of `yours` as a share of that of `good` (same device, no habits): likely, and the
// span over curves and waits, where the spread between people cancels. A habit whose factor is an
// assumption widens it from no effect at all to twice the assumed one (in proportion).
// likely 0 when nothing reached; error as estimate().
struct Comparison {
  Outcome yours, good;
  Band share;
};
[[nodiscard]] Result<Comparison> compare(const Technique& yours, const Technique& good);

}  // namespace rehale::dose
