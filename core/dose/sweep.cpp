#include "core/dose/sweep.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/dose/mouth_throat.h"

namespace rehale::dose {

namespace {

double both(double a, double b) { return std::min(1., std::sqrt(a * a + b * b)); }
double caught(double load) { return 1 - portable_exp(-load); }
double s_curve(double load) { return 1 - 1 / (load + 1); }
double part_of(double efficiency, double passed) {
  return passed >= 1 ? efficiency : 1 - power(1 - efficiency, passed);
}

// ln of Stokes number times Re^.37 of a 1 um sphere without slip in a throat 22 mm wide.
double ln_grgic_load(double flow_ml_s) {
  constexpr double k_width_m = .022;
  const double speed = flow_ml_s * 1e-6 / (k_pi * k_width_m * k_width_m / 4);
  const double stokes = 1e-9 * speed / (18 * k_room_air.viscosity_pa_s * k_width_m);
  const double reynolds = 1.2 * speed * k_width_m / k_room_air.viscosity_pa_s;
  return portable_log(stokes) + .37 * portable_log(reynolds);
}

}  // namespace

// How far a slice gets, and what of that is the same for all sizes.
struct Sweep::Reach {
  double bronchi, small;  // shares of bronchi and bronchioles it passed
  bool to_small, to_alveoli;
  double stays_to_ae, stays_to_th;  // time in the alveoli to the powers of the two terms
};

Sweep::Sweep(const Bins& bins, const Breath& breath)
    : breath_(breath),
      swell_(1 + .5 * breath.inspired_ml / breath.frc_ml),
      k_(1 + breath.inspired_ml / breath.frc_ml) {
  const SmallWay in = small_way(breath.flow_ml_s);
  const SmallWay out = small_way(breath.exhale_ml_s);
  for (std::size_t i = 0; i < sizes_.size(); ++i) {
    sizes_[i].ln_d = bins.ln_d[i];
    sizes_[i].weight = bins.weight[i];
    prepare(sizes_[i], in, out);
  }
}

Sweep::SmallWay Sweep::small_way(double flow_ml_s) const {
  const double t = passing_s(k_bronchioles_ml, flow_ml_s, swell_);
  return {portable_log(t), portable_log(.056 + power(t, 1.5)), power(t, -.25)};
}

double Sweep::small(const Size& size, const SmallWay& way) {
  const double ln_r = way.in_ln_r + size.ln_d * way.of_ln_d;
  return both(caught(.1147 * portable_exp(1.173 * ln_r)),
              caught((167 - 76.8) * portable_exp(.5676 * (size.ln_diffusion + way.ln_time))));
}

// All that depends on the size and the mean flows alone.
void Sweep::prepare(Size& size, const SmallWay& in, const SmallWay& out) const {
  size.d_um = portable_exp(size.ln_d);
  size.ln_diffusion = portable_log(airway_diffusion_cm2_s(size.d_um));
  size.ln_slip = portable_log(slip_hinds(size.d_um));
  size.boost = 22.02 * fine_boost(size.d_um);
  size.small_in = small(size, in);
  size.small_out = small(size, out);
  const double ex = breath_.exhale_ml_s;
  const double ln_load = 2 * size.ln_d + portable_log(ex);
  const double ln_t = portable_log(passing_s(k_bronchi_ml, ex, swell_));
  size.mouth_out = s_curve(3.5e-8 * portable_exp(1.7 * ln_load));
  size.bronchi_out = both(caught(2.04e-6 * portable_exp(1.152 * ln_load)),
                          caught(size.boost * portable_exp(.6391 * (size.ln_diffusion + ln_t))));
  size.settles = .146 * portable_exp(.6495 * 2 * size.ln_d);
  size.diffuses = 273 * portable_exp(.6101 * size.ln_diffusion);
}

// The four curves of mouth_throat.h with powers as sums of logarithms, and the bronchi.
void Sweep::flow(double local_flow_ml_s) {
  const double ln_q = portable_log(local_flow_ml_s);
  const double l_min = local_flow_ml_s / k_ml_s_per_l_min;
  const double ln_t = portable_log(passing_s(k_bronchi_ml, breath_.flow_ml_s, swell_));
  const double ln_icrp = .6 * ln_q - .2 * portable_log(breath_.inspired_ml);
  // Cheng: diffusion of a 1 um sphere without slip; Grgic: its Stokes number times Re^.37.
  const double ln_cheng = portable_log(diffusion_m2_s(1, k_room_air, 1) * 1e4);
  const double by_flow = 20.4 * power(l_min, -.31);
  const double ln_grgic = ln_grgic_load(local_flow_ml_s);
  for (Size& size : sizes_) {
    const double ln_d2 = 2 * size.ln_d;
    const double ln_load = ln_d2 + ln_q;
    const double ln_diffusion = ln_cheng + size.ln_slip - size.ln_d;
    size.mouth_in[0] = s_curve(3.5e-8 * portable_exp(1.7 * ln_load));
    size.mouth_in[1] = s_curve(1.1e-4 * portable_exp(1.4 * (ln_d2 + ln_icrp)));
    size.mouth_in[2] = caught(.000278 * size.d_um * size.d_um * l_min +
                              by_flow * portable_exp(.66 * ln_diffusion));
    size.mouth_in[3] = s_curve(11.5 * portable_exp(1.912 * (ln_grgic + ln_d2 + size.ln_slip)));
    size.bronchi_in = both(caught(4.08e-6 * portable_exp(1.152 * ln_load)),
                           caught(size.boost * portable_exp(.6391 * (size.ln_diffusion + ln_t))));
  }
}

Landed Sweep::through(const Size& size, const Reach& reach) const {
  Landed out;
  double left = 1 - size.mouth_in[0];
  out.mouth_throat = size.mouth_in[0];
  const auto take = [&left](double share) {
    const double taken = left * share;
    left -= taken;
    return taken;
  };
  out.conducting += take(part_of(size.bronchi_in, reach.bronchi));
  if (!reach.to_small) {
    out.conducting += take(settled_mixed(size.d_um, breath_.hold_s, .6));
  } else {
    out.conducting += take(part_of(size.small_in, reach.small));
    if (reach.to_alveoli) {
      out.alveolar += take(both(caught(size.settles * reach.stays_to_ae),
                                caught(size.diffuses * reach.stays_to_th)));
    } else {
      out.conducting += take(settled_mixed(size.d_um, breath_.hold_s, .08));
    }
    out.conducting += take(part_of(size.small_out, reach.small));
  }
  out.conducting += take(part_of(size.bronchi_out, reach.bronchi));
  out.mouth_throat += take(size.mouth_out);
  out.exhaled = left;
  return out;
}

SliceLanded Sweep::slice(double penetration_ml) const {
  const double deep_ml = penetration_ml - k_mouth_ml;
  const double bronchi_ml = k_bronchi_ml * k_;
  const double small_ml = k_bronchioles_ml * k_;
  const double alveolar_ml = deep_ml - bronchi_ml - small_ml;
  const double stays_s =
      alveolar_ml / breath_.flow_ml_s + breath_.hold_s + alveolar_ml / breath_.exhale_ml_s;
  const Reach reach{.bronchi = std::min(1., deep_ml / bronchi_ml),
                    .small = std::min(1., (deep_ml - bronchi_ml) / small_ml),
                    .to_small = deep_ml >= bronchi_ml,
                    .to_alveoli = alveolar_ml >= 0,
                    .stays_to_ae = power(stays_s, .6495),
                    .stays_to_th = power(stays_s, .6101)};
  SliceLanded sum;
  for (const Size& size : sizes_) {
    if (deep_ml <= 0) {
      sum.at.mouth_throat += size.weight * size.mouth_in[0];
      sum.at.exhaled += size.weight * (1 - size.mouth_in[0]);
      continue;
    }
    const Landed at = through(size, reach);
    sum.at.mouth_throat += size.weight * at.mouth_throat;
    sum.at.conducting += size.weight * at.conducting;
    sum.at.alveolar += size.weight * at.alveolar;
    sum.at.exhaled += size.weight * at.exhaled;
    const double per_entering =
        size.weight * (at.conducting + at.alveolar) / (1 - size.mouth_in[0]);
    for (int curve = 0; curve < k_curves; ++curve) {
      sum.lung[static_cast<std::size_t>(curve)] += per_entering * (1 - size.mouth_in[curve]);
    }
  }
  return sum;
}

}  // namespace rehale::dose
