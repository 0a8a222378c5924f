#include "core/dose/numbers.h"

#include <cstddef>

namespace rehale::dose {

namespace {

constexpr double k_two_by_root_pi = 1.1283791670955126;
constexpr double k_root_half = .70710678118654752;

// The weights are the same for every aerosol: made by the compiler.
constexpr std::array<double, k_bins> make_weights() {
  std::array<double, k_bins> weights{};
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double z = k_bin_reach * (2 * (static_cast<double>(i) + .5) / k_bins - 1);
    weights[i] = portable_exp(-.5 * z * z);
    sum += weights[i];
  }
  for (double& weight : weights) weight /= sum;
  return weights;
}

constexpr std::array<double, k_bins> k_weights = make_weights();

}  // namespace

double error_function(double x) {
  const double size = x < 0 ? -x : x;
  if (size > 6) return x < 0 ? -1 : 1;
  double term = size;
  double sum = size;
  for (int n = 1; n < 200 && term > 1e-17 * sum; ++n) {
    term *= 2 * size * size / (2 * n + 1);
    sum += term;
  }
  const double erf = k_two_by_root_pi * portable_exp(-size * size) * sum;
  return x < 0 ? -erf : erf;
}

double mass_below(double diameter_um, double mmad_um, double gsd) {
  const double z = portable_log(diameter_um / mmad_um) / portable_log(gsd);
  return .5 * (1 + error_function(z * k_root_half));
}

double hatch_choate(double count_median_um, double gsd, double q) {
  const double sigma = portable_log(gsd);
  return count_median_um * portable_exp(q * sigma * sigma);
}

Bins lognormal_bins(double mmad_um, double gsd) {
  Bins bins{{}, k_weights};
  const double middle = portable_log(mmad_um);
  const double sigma = portable_log(gsd);
  for (std::size_t i = 0; i < bins.ln_d.size(); ++i) {
    const double z = k_bin_reach * (2 * (static_cast<double>(i) + .5) / k_bins - 1);
    bins.ln_d[i] = middle + sigma * z;
  }
  return bins;
}

}  // namespace rehale::dose
