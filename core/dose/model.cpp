#include "core/dose/model.h"

#include <algorithm>
#include <cmath>

#include "core/dose/devices.h"
#include "core/dose/mouth_throat.h"
#include "core/dose/powder.h"
#include "core/dose/sweep.h"

namespace rehale::dose {

namespace {

Result<void> check(const Technique& t) {
  struct Given {
    const char* name;
    double value;
    Range range;
  };
  const std::array<Given, 7> all{{{"flow_l_per_min", t.flow_l_per_min, k_flow_l_per_min},
                                  {"inspired_ml", t.inspired_ml, k_inspired_ml},
                                  {"press_s", t.press_s, k_press_s},
                                  {"hold_s", t.hold_s, k_hold_s},
                                  {"exhale_l_per_min", t.exhale_l_per_min, k_flow_l_per_min},
                                  {"vents_covered", t.vents_covered, k_vents_covered},
                                  {"frc_ml", t.frc_ml, k_frc_ml}}};
  for (const Given& given : all) {
    if (!given.range.holds(given.value)) {
      return fail("outside-range", given.name, "outside the range in core/dose/technique.h");
    }
  }
  return {};
}

bool blisters(Device device) {
  return device == Device::lever_powder || device == Device::cover_powder;
}

// What leaves the device, the fine share of it, and the breath it leaves in.
struct Release {
  double out = 0, fine = 0;
  double flow_l_min = 0, from_s = 0;
};

Release release_of(const Technique& t, const Parameters& p) {
  Release r{.out = 1 - p.kept, .fine = p.fine, .flow_l_min = t.flow_l_per_min, .from_s = t.press_s};
  if (is_pressed(t.device)) {
    const bool suspension =
        t.device == Device::suspension_spray || t.device == Device::chamber_spray;
    if (suspension && !t.shaken) {
      r.out *= k_unshaken_out;
      r.fine *= k_unshaken_fine;
    }
    return r;
  }
  r.from_s = p.plume_from_s;
  r.flow_l_min = flow_with_covered_l_min(t.flow_l_per_min, t.vents_covered);
  const double pull_kpa = pressure_kpa(p.resistance, r.flow_l_min);
  r.out = released_share(p.most, pull_kpa, p.most_kpa);
  r.fine = released_share(p.fine, pull_kpa, p.fine_kpa);
  if (t.tilted && blisters(t.device)) r.out *= k_tilted_out;
  if (t.breathed_into_device) {
    r.out *= k_blown_out;
    r.fine *= k_blown_fine;
  }
  return r;
}

// Flow and volume over one breath in.
struct Course {
  FlowShape shape;
  double mean_ml_s, volume_ml;
  [[nodiscard]] double length_s() const { return volume_ml / mean_ml_s; }
  [[nodiscard]] double flow_at(double t_s) const {
    if (shape == FlowShape::constant || t_s <= 0) return mean_ml_s;
    return std::max(1., mean_ml_s * (k_pi / 2) * std::sin(k_pi * t_s / length_s()));
  }
  [[nodiscard]] double to_come_ml(double t_s) const {
    if (t_s <= 0) return volume_ml;
    if (shape == FlowShape::constant) return std::max(0., volume_ml - mean_ml_s * t_s);
    return volume_ml * .5 * (1 + std::cos(k_pi * t_s / length_s()));
  }
};

// Adds up slices into an outcome.
class Sum {
 public:
  explicit Sum(Release release) : release_(release) { to_.likely.device = 1 - release.out; }
  void coarse(double part) { to_.likely.mouth_throat += part * release_.out * (1 - release_.fine); }
  void lost(double part) { to_.likely.exhaled += fine(part); }
  // early_s: how long before the breath it was pressed, 0 when it was not.
  void add(double part, double early_s, const SliceLanded& slice) {
    const double whole = fine(part);
    const double alive = early_s > 0 ? portable_exp(-early_s / k_wait_s) : 1;
    to_.likely.mouth_throat += whole * (1 - alive) + whole * alive * slice.at.mouth_throat;
    to_.likely.conducting += whole * alive * slice.at.conducting;
    to_.likely.alveolar += whole * alive * slice.at.alveolar;
    to_.likely.exhaled += whole * alive * slice.at.exhaled;
    for (std::size_t c = 0; c < slice.lung.size(); ++c) {
      to_.lung_by_curve[c] += whole * alive * slice.lung[c];
    }
    to_.lung_by_wait[0] += whole * slice.lung[0] * waits(early_s, k_wait_shortest_s);
    to_.lung_by_wait[1] += whole * slice.lung[0] * waits(early_s, k_wait_longest_s);
  }
  [[nodiscard]] const Outcome& outcome() const { return to_; }

 private:
  [[nodiscard]] double fine(double part) const { return part * release_.out * release_.fine; }
  static double waits(double early_s, double scale_s) {
    return early_s > 0 ? portable_exp(-early_s / scale_s) : 1;
  }
  Release release_;
  Outcome to_;
};

Outcome puff(const Technique& t, const Parameters& p) {
  const Release release = release_of(t, p);
  const double mean = release.flow_l_min * k_ml_s_per_l_min;
  const Course course{t.shape, mean, t.inspired_ml};
  Sum sum(release);
  sum.coarse(1);
  const bool chamber = t.device == Device::chamber_spray;
  const bool all_late = !chamber && release.from_s + p.plume_s * .5 / k_slices > course.length_s();
  if (all_late) {
    sum.lost(1);
    return sum.outcome();
  }
  Sweep sweep(lognormal_bins(p.mmad_um, p.gsd),
              {t.inspired_ml, mean, t.hold_s, t.exhale_l_per_min * k_ml_s_per_l_min, t.frc_ml});
  sweep.flow(mean);
  // Slices that were pressed before the breath all enter at its start.
  const SliceLanded first = release.from_s < 0 ? sweep.slice(t.inspired_ml) : SliceLanded{};
  for (int i = 0; i < k_slices; ++i) {
    const double middle = (i + .5) / k_slices;
    const double at_s = release.from_s + middle * p.plume_s;
    if (chamber) {
      const double sip = std::min(t.inspired_ml, k_chamber_sip_ml * middle);
      sum.add(1. / k_slices, 0, sweep.slice(t.inspired_ml - sip));
    } else if (at_s <= 0) {
      sum.add(1. / k_slices, -at_s, first);
    } else if (at_s > course.length_s()) {
      sum.lost(1. / k_slices);
    } else {
      if (t.shape != FlowShape::constant) sweep.flow(course.flow_at(at_s));
      sum.add(1. / k_slices, 0, sweep.slice(course.to_come_ml(at_s)));
    }
  }
  return sum.outcome();
}

Leans leans_of(const Technique& t) {
  Leans leans;
  const bool pressed = is_pressed(t.device);
  const auto when = [&leans](bool so, Lean lean) {
    if (so) leans.add(lean);
  };
  when(true, Lean::coarse_share);
  when(true, Lean::adult_lung);
  when(true, Lean::hold_weak);
  when(pressed && t.device != Device::chamber_spray && t.press_s < 0, Lean::press_wait);
  when(t.device == Device::extrafine_spray && t.press_s < 0, Lean::early_offset);
  when(t.device <= Device::chamber_spray && t.device != Device::extrafine_spray && !t.shaken,
       Lean::not_shaken);
  when(t.tilted && blisters(t.device), Lean::tilted);
  when(!pressed && t.breathed_into_device, Lean::breathed_in);
  when(!pressed && t.vents_covered > 0, Lean::vents);
  when(!pressed && t.loaded_twice, Lean::loaded_twice);
  when(t.device == Device::cover_powder, Lean::cover_lung);
  when(!pressed, Lean::powder_release);
  const Range measured{k_mouth_flow_low_l_min, k_mouth_flow_high_l_min};
  when(!measured.holds(t.flow_l_per_min), Lean::flow_outside);
  return leans;
}

void add_band(Outcome& outcome, double people_spread) {
  const double likely = outcome.likely.lung();
  outcome.lung = {likely, likely, likely};
  if (likely <= 0) return;
  const auto [curves_low, curves_high] = std::ranges::minmax(outcome.lung_by_curve);
  const auto [waits_low, waits_high] = std::ranges::minmax(outcome.lung_by_wait);
  const auto square = [likely](double end) { return (end / likely - 1) * (end / likely - 1); };
  const double people = people_spread * people_spread;
  const double down = std::sqrt(people + square(curves_low) + square(waits_low));
  const double up = std::sqrt(people + square(curves_high) + square(waits_high));
  outcome.lung.low = std::max(0., likely * (1 - down));
  outcome.lung.high = std::min(1., likely * (1 + up));
}

// Two doses used up, the first of them lost whole (an assumption: Lean::loaded_twice).
void halve(Outcome& outcome) {
  Fractions& f = outcome.likely;
  f = {.5 + .5 * f.device, .5 * f.mouth_throat, .5 * f.conducting, .5 * f.alveolar, .5 * f.exhaled};
  for (double& lung : outcome.lung_by_curve) lung *= .5;
  for (double& lung : outcome.lung_by_wait) lung *= .5;
  outcome.doses_used = 2;
}

// Without the habits whose factor is an assumption.
Technique without_assumed(Technique t) {
  t.breathed_into_device = false;
  t.vents_covered = 0;
  return t;
}

}  // namespace

Result<Outcome> estimate(const Technique& technique) {
  if (auto ok = check(technique); !ok) return tl::unexpected(ok.error());
  const Parameters& p = parameters(technique.device);
  Outcome outcome;
  if (technique.released) {
    outcome = puff(technique, p);
    if (technique.loaded_twice && !is_pressed(technique.device)) halve(outcome);
  } else {
    outcome.likely.device = 1;
  }
  outcome.leans = leans_of(technique);
  add_band(outcome, p.people_spread);
  return outcome;
}

Result<Comparison> compare(const Technique& yours, const Technique& good) {
  auto mine = estimate(yours);
  if (!mine) return tl::unexpected(mine.error());
  auto best = estimate(good);
  if (!best) return tl::unexpected(best.error());
  Comparison out{*mine, *best, {}};
  const double base = best->likely.lung();
  if (base <= 0) return out;
  const double likely = mine->likely.lung() / base;
  out.share = {likely, likely, likely};
  const auto span = [&out](double share) {
    out.share.low = std::min(out.share.low, share);
    out.share.high = std::max(out.share.high, share);
  };
  for (std::size_t c = 0; c < best->lung_by_curve.size(); ++c) {
    if (best->lung_by_curve[c] > 0) span(mine->lung_by_curve[c] / best->lung_by_curve[c]);
  }
  for (const double lung : mine->lung_by_wait) span(lung / base);
  if (mine->leans.has(Lean::breathed_in) || mine->leans.has(Lean::vents)) {
    const auto plain = estimate(without_assumed(yours));
    if (plain && plain->likely.lung() > 0) {
      span(plain->likely.lung() / base);
      span(likely * mine->likely.lung() / plain->likely.lung());
    }
  }
  return out;
}

}  // namespace rehale::dose
