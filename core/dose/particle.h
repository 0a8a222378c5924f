// One particle in air: slip, settling, relaxation, diffusion, aerodynamic size.
// Diameters in um, unit density unless said otherwise; good from .01 to 100 um (settling law: below
// about 20 um at unit density, where its Reynolds number stays under .1).
// Must not know: lungs, devices.
#pragma once

#include "core/dose/numbers.h"

namespace rehale::dose {

inline constexpr double k_gravity_m_s2 = 9.81;
inline constexpr double k_boltzmann = 1.380649e-23;
inline constexpr double k_pi = 3.14159265358979323846;

// Air: viscosity, mean free path, temperature.
struct Air {
  double viscosity_pa_s, free_path_um, kelvin;
};
inline constexpr Air k_room_air{1.81e-5, .066, 293.15};
inline constexpr Air k_airway_air{1.9e-5, .0712, 310.15};  // 37 C, humid: ICRP 66 (from memory)

// Cunningham slip correction, three published forms that agree within 2 % above .1 um:
// Allen & Raabe 1985 as in Hinds 1999 (from memory), Davies (read), ICRP 66 (from memory).
[[nodiscard]] constexpr double slip_hinds(double d_um) {
  const double path = k_room_air.free_path_um;
  return 1 + path / d_um * (2.34 + 1.05 * portable_exp(-.39 * d_um / path));
}
[[nodiscard]] constexpr double slip_davies(double d_um) {
  const double path = k_room_air.free_path_um;
  return 1 + 2 * path / d_um * (1.257 + .4 * portable_exp(-1.1 * d_um / (2 * path)));
}
[[nodiscard]] constexpr double slip_airway(double d_um) {
  const double path = k_airway_air.free_path_um;
  return 1 + 2 * path / d_um * (1.246 + .42 * portable_exp(-.87 * d_um / (2 * path)));
}

// Stokes settling in room air, m/s. Density in g/cm3.
[[nodiscard]] constexpr double settling_m_s(double d_um, double density = 1) {
  const double d_m = d_um * 1e-6;
  return density * 1000 * d_m * d_m * k_gravity_m_s2 * slip_hinds(d_um) /
         (18 * k_room_air.viscosity_pa_s);
}
[[nodiscard]] constexpr double relaxation_s(double d_um, double density = 1) {
  return settling_m_s(d_um, density) / k_gravity_m_s2;
}

// Stokes-Einstein, m2/s.
[[nodiscard]] constexpr double diffusion_m2_s(double d_um, const Air& air, double slip) {
  return k_boltzmann * air.kelvin * slip / (3 * k_pi * air.viscosity_pa_s * d_um * 1e-6);
}
// In the airways, cm2/s, as the lung filters want it.
[[nodiscard]] constexpr double airway_diffusion_cm2_s(double d_um) {
  return diffusion_m2_s(d_um, k_airway_air, slip_airway(d_um)) * 1e4;
}

// The unit-density sphere that settles as fast. Density in g/cm3, shape factor 1 for a sphere.
[[nodiscard]] double aerodynamic_um(double volume_equivalent_um, double density, double shape = 1);
// The size that diffuses as fast, from the aerodynamic one (ICRP 66's thermodynamic diameter).
[[nodiscard]] double thermodynamic_um(double aerodynamic_um, double density, double shape = 1);

// Still and mixed settling out of a tube of this width while the breath is held (facts/aerosol.md
// 4c): horizontal tube and still air; tubes of all directions, well mixed; Landahl's form (from
// memory). d in um, width in cm.
[[nodiscard]] double settled_still(double d_um, double hold_s, double tube_cm);
[[nodiscard]] double settled_mixed(double d_um, double hold_s, double tube_cm);
[[nodiscard]] double settled_landahl(double d_um, double hold_s, double tube_cm);

}  // namespace rehale::dose
