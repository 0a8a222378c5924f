#include "core/dose/lung_filters.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/dose/mouth_throat.h"

namespace rehale::dose {

namespace {

double both(double aerodynamic, double thermodynamic) {
  return std::min(1., std::sqrt(aerodynamic * aerodynamic + thermodynamic * thermodynamic));
}

double caught(double a, double r, double p) { return 1 - portable_exp(-a * power(r, p)); }

// Nose front (halved twice: both ways), nose back, or mouth.
struct Head {
  double front = 0, back = 0;
};
Head head(double d_um, double diffusion, const TidalBreath& breath) {
  const double slow = diffusion * power(breath.flow_ml_s, -.25);
  const double impact = d_um * d_um * breath.flow_ml_s;
  if (!breath.by_nose) {
    return {0, both(mouth_icrp(d_um, breath.flow_ml_s, breath.volume_ml), caught(9, slow, .5))};
  }
  return {both(.5 * (1 - 1 / (3.0e-4 * impact + 1)), .5 * caught(18, slow, .5)),
          both(1 - 1 / (5.5e-5 * power(impact, 1.17) + 1), caught(15.1, slow, .538))};
}

}  // namespace

double fine_boost(double thermodynamic_um) {
  constexpr double k_ln10 = 2.302585092994045684;
  const double tens = portable_log(100 + 10 / power(thermodynamic_um, .9)) / k_ln10;
  return 1 + 100 * portable_exp(-tens * tens);
}

double bronchi(double d_um, double flow_ml_s, double passing_s, bool breathing_out,
               double thermodynamic_um) {
  const double a = breathing_out ? 2.04e-6 : 4.08e-6;
  const double diffused = airway_diffusion_cm2_s(thermodynamic_um) * passing_s;
  return both(caught(a, d_um * d_um * flow_ml_s, 1.152),
              caught(22.02 * fine_boost(thermodynamic_um), diffused, .6391));
}

double bronchioles(double d_um, double passing_s, double thermodynamic_um) {
  const double r = (.056 + power(passing_s, 1.5)) * power(d_um, power(passing_s, -.25));
  const double diffused = airway_diffusion_cm2_s(thermodynamic_um) * passing_s;
  return both(caught(.1147, r, 1.173), caught(-76.8 + 167, diffused, .5676));
}

double alveoli(double d_um, double staying_s, double thermodynamic_um) {
  const double diffused = airway_diffusion_cm2_s(thermodynamic_um) * staying_s;
  return both(caught(.146, d_um * d_um * staying_s, .6495), caught(170 + 103, diffused, .6101));
}

Regions tidal(double d_um, const TidalBreath& breath) {
  const double thermo = thermodynamic_um(d_um, breath.density, breath.shape);
  const double volume = breath.volume_ml;
  const double flow = breath.flow_ml_s;
  const double k = 1 + volume / breath.frc_ml;
  const double swell = 1 + .5 * volume / breath.frc_ml;
  const double t_bronchi = passing_s(k_bronchi_ml, flow, swell);
  const double t_small = passing_s(k_bronchioles_ml, flow, swell);
  const double beyond_mouth = volume - k_mouth_ml;
  const double beyond_bronchi = beyond_mouth - k_bronchi_ml * k;
  const double deep = beyond_bronchi - k_bronchioles_ml * k;
  const Head at_head = head(d_um, airway_diffusion_cm2_s(thermo), breath);
  const double small = bronchioles(d_um, t_small, thermo);

  Regions out;
  struct Filter {
    double Regions::*where;
    double efficiency, reached;
  };
  const std::array<Filter, 9> row{{
      {&Regions::et1, at_head.front, 1},
      {&Regions::et2, at_head.back, 1},
      {&Regions::bronchi, bronchi(d_um, flow, t_bronchi, false, thermo), beyond_mouth / volume},
      {&Regions::bronchioles, small, beyond_bronchi / volume},
      {&Regions::alveoli, alveoli(d_um, deep / flow, thermo), deep / volume},
      {&Regions::bronchioles, small, beyond_bronchi / volume},
      {&Regions::bronchi, bronchi(d_um, flow, t_bronchi, true, thermo), beyond_mouth / volume},
      {&Regions::et2, at_head.back, 1},
      {&Regions::et1, at_head.front, 1},
  }};
  const double inhaled =
      breath.counts_inhalability ? 1 - .5 * (1 - 1 / (7.6e-4 * power(d_um, 2.8) + 1)) : 1;
  double left = inhaled;
  for (const Filter& filter : row) {
    out.*filter.where += left * filter.efficiency * filter.reached;
    left *= 1 - filter.efficiency;
  }
  out.exhaled = inhaled - out.deposited();
  return out;
}

}  // namespace rehale::dose
