// The lung as a row of filters: ICRP 66's semi-empirical efficiencies of bronchi (BB), bronchioles
// (bb) and alveoli (AI), and one tidal breath through them.
// d in um, volumes in mL, flows in mL/s, times in s. Fitted to .005-15 um, 50-2000 mL/s. Constants:
// second-hand copies and memory, as marked in facts/aerosol.md 4a; the reference-worker table
// checks most of them, but hardly BB's thermodynamic term, and not the mouth. Healthy adult man.
// Must not know: devices, holds, presses.
#pragma once

#include "core/dose/particle.h"

namespace rehale::dose {

inline constexpr double k_mouth_ml = 50;
inline constexpr double k_bronchi_ml = 49;
inline constexpr double k_bronchioles_ml = 47;
inline constexpr double k_reference_frc_ml = 3301;

// How long one breath's air takes through bronchi or bronchioles of this volume: both swell with
// the breath.
[[nodiscard]] constexpr double passing_s(double part_ml, double flow_ml_s, double swell) {
  return part_ml / flow_ml_s * swell;
}

// psi: how much more the finest particles diffuse in the bronchi.
[[nodiscard]] double fine_boost(double thermodynamic_um);

// Efficiency of each filter, sqrt(aerodynamic^2 + thermodynamic^2), at most 1. thermodynamic_um
// equals d_um for unit density.
[[nodiscard]] double bronchi(double d_um, double flow_ml_s, double passing_s, bool breathing_out,
                             double thermodynamic_um);
[[nodiscard]] double bronchioles(double d_um, double passing_s, double thermodynamic_um);
[[nodiscard]] double alveoli(double d_um, double staying_s, double thermodynamic_um);

// The aerosol of one tidal breath, as shares of what is in the air in front of the face.
struct TidalBreath {
  double volume_ml = 1000, flow_ml_s = 500;
  bool by_nose = false;
  bool counts_inhalability = false;  // at rest, no wind: ICRP 66; false for a mouthpiece
  double density = 1, shape = 1;     // g/cm3
  double frc_ml = k_reference_frc_ml;
};
struct Regions {
  double et1 = 0, et2 = 0, bronchi = 0, bronchioles = 0, alveoli = 0, exhaled = 0;
  [[nodiscard]] constexpr double deposited() const {
    return et1 + et2 + bronchi + bronchioles + alveoli;
  }
};
[[nodiscard]] Regions tidal(double d_um, const TidalBreath& breath);

}  // namespace rehale::dose
