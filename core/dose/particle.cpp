#include "core/dose/particle.h"

#include <cmath>

namespace rehale::dose {

namespace {

// Where growing(x) reaches `target`, by halving in proportion between 1e-4 and 500 um.
template <class Growing>
double halve_to(double target, Growing growing) {
  double low = 1e-4;
  double high = 500;
  for (int i = 0; i < 200; ++i) {
    const double middle = std::sqrt(low * high);
    (growing(middle) < target ? low : high) = middle;
  }
  return std::sqrt(low * high);
}

}  // namespace

double aerodynamic_um(double volume_equivalent_um, double density, double shape) {
  const double d = volume_equivalent_um;
  return halve_to(density / shape * d * d * slip_hinds(d),
                  [](double x) { return x * x * slip_hinds(x); });
}

double thermodynamic_um(double aerodynamic_um, double density, double shape) {
  const double d = aerodynamic_um;
  if (density == 1 && shape == 1) return d;
  return halve_to(d * d * slip_airway(d),
                  [=](double x) { return density / shape * x * x * slip_airway(x); });
}

double settled_still(double d_um, double hold_s, double tube_cm) {
  const double fallen = settling_m_s(d_um) * 100 * hold_s / tube_cm;
  if (fallen >= 1) return 1;
  // Two equal circles, one of them displaced by `fallen` widths.
  return 1 - 2 / k_pi * (std::acos(fallen) - fallen * std::sqrt(1 - fallen * fallen));
}

double settled_mixed(double d_um, double hold_s, double tube_cm) {
  return 1 - portable_exp(-settling_m_s(d_um) * 100 * hold_s / tube_cm);
}

double settled_landahl(double d_um, double hold_s, double tube_cm) {
  return 1 - portable_exp(-.8 * settling_m_s(d_um) * 100 * hold_s / (tube_cm / 2));
}

}  // namespace rehale::dose
