// Powers and the error function out of + * / and the portable exp and log, and the bins of a
// lognormal aerosol: the same bits natively and in WASM.
// Must not know: particles' fate, people.
#pragma once

#include <array>

#include "core/base/portable_math.h"

namespace rehale::dose {

// x^p for x > 0 (0 for x <= 0, p > 0).
[[nodiscard]] constexpr double power(double x, double p) {
  return x > 0 ? portable_exp(p * portable_log(x)) : 0;
}

// erf(x): absolute error below 1e-15 (checked against scipy.special.erf). Series of positive terms,
// Abramowitz & Stegun 7.1.6; beyond 6 it is 1 to the last bit.
[[nodiscard]] double error_function(double x);

// Share of the mass below `diameter_um`. Both diameters and gsd - 1 above 0. One mode only.
[[nodiscard]] double mass_below(double diameter_um, double mmad_um, double gsd);

// Hatch-Choate: count median times exp(q ln^2 gsd); q = 3 mass, 2 surface, 1.5 mean volume.
// Source: Hinds 1999 ch. 4 (from memory).
[[nodiscard]] double hatch_choate(double count_median_um, double gsd, double q);

// Mid-points of 41 equal steps over +-4 sigma, weights adding to 1 (a choice: facts/aerosol.md 2).
inline constexpr int k_bins = 41;
inline constexpr double k_bin_reach = 4;

struct Bins {
  std::array<double, k_bins> ln_d;    // of the aerodynamic diameter in um
  std::array<double, k_bins> weight;  // share of the mass
};
[[nodiscard]] Bins lognormal_bins(double mmad_um, double gsd);

}  // namespace rehale::dose
