// How a powder inhaler answers the pull: pressure, flow, release.
// dP in kPa, flow in L/min, resistance in kPa^0.5 min/L. Pressure, not flow, decides (CLA: Clark,
// Weers & Dhand 2020); about 1 kPa is a reasonable lower bound for any powder inhaler (CLA).
// Must not know: people, lungs.
#pragma once

#include "core/dose/numbers.h"

namespace rehale::dose {

[[nodiscard]] constexpr double pressure_kpa(double resistance, double flow_l_min) {
  return resistance * flow_l_min * (resistance * flow_l_min);
}

// pressure >= 0, resistance > 0.
[[nodiscard]] double flow_l_min(double resistance, double pressure_kpa);

// Covering a share of the air inlets at the same effort: the flow falls as the open area.
// ASSUMPTION (physics only): no published number for covered vents was found. share in [0, 1).
[[nodiscard]] constexpr double flow_with_covered_l_min(double flow, double share) {
  return flow * (1 - share);
}

// Share that comes loose at this pressure: most (1 - exp(-dP/scale)). A fit, not a law.
[[nodiscard]] constexpr double released_share(double most, double pressure_kpa, double scale_kpa) {
  return most * (1 - portable_exp(-pressure_kpa / scale_kpa));
}

}  // namespace rehale::dose
