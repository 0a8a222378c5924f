#include "core/dose/single_breath.h"

#include <algorithm>

#include "core/dose/mouth_throat.h"

namespace rehale::dose {

namespace {

constexpr double k_bronchus_cm = .6;  // widths for the hold of a slice that stopped there
constexpr double k_bronchiole_cm = .08;

// What is still airborne; hands it out part by part.
struct Airborne {
  double left = 1;
  double take(double share) {
    const double taken = left * share;
    left -= taken;
    return taken;
  }
};

// Only a part of the filter's length was passed.
double part_of(double efficiency, double passed) {
  return passed >= 1 ? efficiency : 1 - power(1 - efficiency, passed);
}

}  // namespace

Landed one_slice(double d_um, double local_flow_ml_s, double penetration_ml, const Breath& breath) {
  Landed out;
  Airborne air;
  out.mouth_throat = air.take(mouth_stahlhofen(d_um, local_flow_ml_s));
  const double deep_ml = penetration_ml - k_mouth_ml;
  if (deep_ml <= 0) {
    out.exhaled = air.left;
    return out;
  }
  const double k = 1 + breath.inspired_ml / breath.frc_ml;
  const double swell = 1 + .5 * breath.inspired_ml / breath.frc_ml;
  const double bronchi_ml = k_bronchi_ml * k;
  const double small_ml = k_bronchioles_ml * k;
  const double in = breath.flow_ml_s;
  const double ex = breath.exhale_ml_s;
  const double f = std::min(1., deep_ml / bronchi_ml);
  out.conducting += air.take(
      part_of(bronchi(d_um, local_flow_ml_s, passing_s(k_bronchi_ml, in, swell), false, d_um), f));
  if (deep_ml < bronchi_ml) {
    out.conducting += air.take(settled_mixed(d_um, breath.hold_s, k_bronchus_cm));
  } else {
    const double g = std::min(1., (deep_ml - bronchi_ml) / small_ml);
    const double alveolar_ml = deep_ml - bronchi_ml - small_ml;
    out.conducting +=
        air.take(part_of(bronchioles(d_um, passing_s(k_bronchioles_ml, in, swell), d_um), g));
    if (alveolar_ml < 0) {
      out.conducting += air.take(settled_mixed(d_um, breath.hold_s, k_bronchiole_cm));
    } else {
      const double stays_s = alveolar_ml / in + breath.hold_s + alveolar_ml / ex;
      out.alveolar += air.take(alveoli(d_um, stays_s, d_um));
    }
    out.conducting +=
        air.take(part_of(bronchioles(d_um, passing_s(k_bronchioles_ml, ex, swell), d_um), g));
  }
  out.conducting +=
      air.take(part_of(bronchi(d_um, ex, passing_s(k_bronchi_ml, ex, swell), true, d_um), f));
  out.mouth_throat += air.take(mouth_stahlhofen(d_um, ex));
  out.exhaled = air.left;
  return out;
}

}  // namespace rehale::dose
