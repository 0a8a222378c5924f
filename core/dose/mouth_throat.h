// Which share of an aerosol lands in mouth and throat: four published curves. They differ by a
// factor of 2 to 3 below 3 um: that difference is the model's uncertainty, not noise to hide.
// d in um (aerodynamic), flow in mL/s. None explains the mouth dose of real inhalers at 1.5 um:
// the coarse share of a device is added by model.cpp.
// Must not know: devices.
#pragma once

#include "core/dose/particle.h"

namespace rehale::dose {

inline constexpr double k_ml_s_per_l_min = 1000. / 60;

// Where the first curve was measured; beyond it results are marked Lean::flow_outside.
inline constexpr double k_mouth_flow_low_l_min = 7;
inline constexpr double k_mouth_flow_high_l_min = 90;

// Stahlhofen, Rudolf & James 1989, living people through a mouthpiece, about 1-15 um, 7-90 L/min
// (formula as given in the brief, not read again). The one the model uses.
[[nodiscard]] constexpr double mouth_stahlhofen(double d_um, double flow_ml_s) {
  return 1 - 1 / (3.5e-8 * power(d_um * d_um * flow_ml_s, 1.7) + 1);
}

// ICRP 66, tidal breathing by mouth: impaction only (constants second-hand).
[[nodiscard]] constexpr double mouth_icrp(double d_um, double flow_ml_s, double breath_ml) {
  const double r = d_um * d_um * power(flow_ml_s, .6) * power(breath_ml, -.2);
  return 1 - 1 / (1.1e-4 * power(r, 1.4) + 1);
}

// Cheng 2003, casts of the mouth, 15-60 L/min and a little more (from memory).
[[nodiscard]] constexpr double mouth_cheng(double d_um, double flow_ml_s) {
  const double l_min = flow_ml_s / k_ml_s_per_l_min;
  const double d_cm2_s = diffusion_m2_s(d_um, k_room_air, slip_hinds(d_um)) * 1e4;
  return 1 - portable_exp(-.000278 * d_um * d_um * l_min -
                          20.4 * power(d_cm2_s, .66) * power(l_min, -.31));
}

// Grgic, Heenan, Burnell & Finlay 2004, realistic replicas, 30-90 L/min (1.912 and the width of
// 22 mm from memory). Stokes and Reynolds number on the width.
[[nodiscard]] constexpr double mouth_grgic(double d_um, double flow_ml_s) {
  constexpr double k_width_m = .022;
  const double speed = flow_ml_s * 1e-6 / (k_pi * k_width_m * k_width_m / 4);
  const double stokes = 1000 * d_um * d_um * 1e-12 * slip_hinds(d_um) * speed /
                        (18 * k_room_air.viscosity_pa_s * k_width_m);
  const double reynolds = 1.2 * speed * k_width_m / k_room_air.viscosity_pa_s;
  return 1 - 1 / (11.5 * power(stokes * power(reynolds, .37), 1.912) + 1);
}

}  // namespace rehale::dose
