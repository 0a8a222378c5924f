// Whole puffs: regression rows and what has to hold for every technique in range.
#include "core/dose/model.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

#include "core/base/rng.h"
#include "core/dose/devices.h"
#include "core/dose/mouth_throat.h"
#include "core/dose/sweep.h"

namespace {

using namespace rehale::dose;

Outcome of(const Technique& technique) {
  const auto got = estimate(technique);
  EXPECT_TRUE(got);
  return got ? *got : Outcome{};
}

double between(rehale::Rng& rng, Range range) {
  return range.low + rng.uniform() * (range.high - range.low);
}

Technique any(rehale::Rng& rng) {
  Technique t;
  t.device = static_cast<Device>(rng.below(k_devices));
  t.shape = rng.below(2) == 0 ? FlowShape::constant : FlowShape::half_sine;
  t.flow_l_per_min = between(rng, k_flow_l_per_min);
  t.inspired_ml = between(rng, k_inspired_ml);
  t.press_s = between(rng, rng.below(2) == 0 ? Range{-2, 6} : k_press_s);
  t.hold_s = between(rng, k_hold_s);
  t.exhale_l_per_min = between(rng, k_flow_l_per_min);
  t.vents_covered = rng.below(2) == 0 ? 0 : between(rng, k_vents_covered);
  t.shaken = rng.below(2) == 0;
  t.breathed_into_device = rng.below(2) == 0;
  t.tilted = rng.below(2) == 0;
  t.loaded_twice = rng.below(4) == 0;
  t.released = rng.below(10) != 0;
  t.frc_ml = between(rng, k_frc_ml);
  return t;
}

TEST(DoseModel, regression_rows_of_the_sheet) {
  // facts/aerosol.md section 9, "Regression values" (independent script, 6 digits).
  struct Line {
    Device device;
    double flow, volume, press;
    std::array<double, 5> shares;
  };
  const auto suspension = Device::suspension_spray;
  for (const Line& line : std::array<Line, 5>{{
           {suspension, 30, 2500, .3, {.100000, .651936, .035350, .192786, .019928}},
           {suspension, 30, 2500, -1, {.100000, .798972, .014380, .078921, .007727}},
           {Device::extrafine_spray, 30, 2500, .3, {0, .295246, .039643, .532993, .132118}},
           {Device::soft_mist, 30, 2500, .2, {.219000, .356829, .066124, .325988, .032058}},
           {Device::reservoir_powder, 36, 2000, 0, {.233429, .591546, .022545, .132289, .020192}},
       }}) {
    Technique t = good_technique(line.device);
    t.flow_l_per_min = line.flow;
    t.inspired_ml = line.volume;
    t.press_s = line.press;
    const Fractions f = of(t).likely;
    const std::array<double, 5> got{f.device, f.mouth_throat, f.conducting, f.alveolar, f.exhaled};
    for (std::size_t i = 0; i < got.size(); ++i) EXPECT_NEAR(got[i], line.shares[i], 6e-7) << i;
  }
}

TEST(DoseModel, shares_add_to_one_and_are_finite_everywhere_in_range) {
  rehale::Rng rng(3);
  for (int n = 0; n < 20000; ++n) {
    const Technique t = any(rng);
    const Outcome out = of(t);
    const Fractions& f = out.likely;
    double sum = 0;
    for (const double share : {f.device, f.mouth_throat, f.conducting, f.alveolar, f.exhaled}) {
      ASSERT_TRUE(std::isfinite(share));
      ASSERT_GE(share, -1e-12);
      sum += share;
    }
    ASSERT_NEAR(sum, 1, 1e-9);
    ASSERT_LE(out.lung.low, out.lung.likely);
    ASSERT_LE(out.lung.likely, out.lung.high + 1e-12);
    ASSERT_GE(out.lung.low, 0);
    ASSERT_LE(out.lung.high, 1);
    ASSERT_NEAR(out.lung_by_curve[0], f.lung(), 1e-9);
  }
}

TEST(DoseModel, holding_longer_never_lowers_the_lung_dose) {
  rehale::Rng rng(4);
  for (int n = 0; n < 3000; ++n) {
    Technique t = any(rng);
    double before = -1;
    for (const double hold : {0., .5, 1., 3., 5., 10., 30., 60.}) {
      t.hold_s = hold;
      const double lung = of(t).likely.lung();
      ASSERT_GE(lung, before - 1e-12) << n << " " << hold;
      before = lung;
    }
  }
}

TEST(DoseModel, pressed_after_the_breath_nothing_reaches_the_lungs) {
  rehale::Rng rng(5);
  for (int n = 0; n < 2000; ++n) {
    Technique t = any(rng);
    t.device = std::array<Device, 3>{Device::suspension_spray, Device::extrafine_spray,
                                     Device::soft_mist}[static_cast<std::size_t>(rng.below(3))];
    const double breath_s = t.inspired_ml * .06 / t.flow_l_per_min;
    if (breath_s > 55) continue;
    t.press_s = breath_s + .01 + 4 * rng.uniform();
    ASSERT_EQ(of(t).likely.lung(), 0);
    ASSERT_EQ(of(t).lung.high, 0);
  }
}

TEST(DoseModel, pressing_earlier_before_the_breath_gives_less) {
  Technique t;
  double before = 1;
  for (double press = 0; press > -8; press -= .25) {
    t.press_s = press;
    const double lung = of(t).likely.lung();
    EXPECT_LT(lung, before) << press;
    before = lung;
  }
}

TEST(DoseModel, slow_is_better_for_sprays_and_firm_for_the_reservoir_powder) {
  // Direction: E9, E10, E11 for sprays (10-90 L/min), E15 and E18 for the reservoir powder
  // (36-58 L/min); the sheet claims no more.
  for (const Device device : {Device::suspension_spray, Device::extrafine_spray}) {
    Technique t = good_technique(device);
    double before = 1;
    for (double flow = 20; flow <= 90; flow += 5) {
      t.flow_l_per_min = flow;
      const double lung = of(t).likely.lung();
      EXPECT_LT(lung, before) << flow;
      before = lung;
    }
  }
  Technique powder = good_technique(Device::reservoir_powder);
  double before = 0;
  for (double flow = 30; flow <= 58; flow += 4) {
    powder.flow_l_per_min = flow;
    const double lung = of(powder).likely.lung();
    EXPECT_GT(lung, before) << flow;
    before = lung;
  }
}

TEST(DoseModel, never_released_stays_in_the_device) {
  Technique t = good_technique(Device::lever_powder);
  t.released = false;
  EXPECT_EQ(of(t).likely.device, 1);
  EXPECT_EQ(of(t).likely.lung(), 0);
}

TEST(DoseModel, loading_twice_loses_one_of_two_doses) {
  Technique t = good_technique(Device::cover_powder);
  const double once = of(t).likely.lung();
  t.loaded_twice = true;
  EXPECT_NEAR(of(t).likely.lung(), once / 2, 1e-12);
  EXPECT_EQ(of(t).doses_used, 2);
  EXPECT_TRUE(of(t).leans.has(Lean::loaded_twice));
}

TEST(DoseModel, says_what_is_outside_its_range) {
  const auto refused = [](Technique t, const char* where) {
    const auto got = estimate(t);
    ASSERT_FALSE(got);
    EXPECT_EQ(got.error().code, "outside-range");
    EXPECT_EQ(got.error().where, where);
  };
  for (const double flow : {4.9, 160.1, -1., std::numeric_limits<double>::quiet_NaN(),
                            std::numeric_limits<double>::infinity()}) {
    refused({.flow_l_per_min = flow}, "flow_l_per_min");
  }
  refused({.inspired_ml = 100}, "inspired_ml");
  refused({.press_s = -61}, "press_s");
  refused({.hold_s = -.1}, "hold_s");
  refused({.exhale_l_per_min = 0}, "exhale_l_per_min");
  refused({.vents_covered = 1}, "vents_covered");
  refused({.frc_ml = 1}, "frc_ml");
}

TEST(DoseModel, the_fast_sweep_lands_as_the_plain_slice_does) {
  rehale::Rng rng(6);
  for (int n = 0; n < 200; ++n) {
    const Breath breath{between(rng, {250, 5000}), between(rng, {100, 2000}), between(rng, {0, 15}),
                        between(rng, {100, 1500}), between(rng, k_frc_ml)};
    const double to_come = rng.uniform() * breath.inspired_ml;
    const double local = between(rng, {50, 2500});
    const Bins bins = lognormal_bins(2.8, 1.8);
    Sweep sweep(bins, breath);
    sweep.flow(local);
    const SliceLanded got = sweep.slice(to_come);
    Landed sum;
    std::array<double, k_curves> lung{};
    for (std::size_t i = 0; i < bins.ln_d.size(); ++i) {
      const Landed one = one_slice(std::exp(bins.ln_d[i]), local, to_come, breath);
      const double d = std::exp(bins.ln_d[i]);
      const std::array<double, k_curves> mouth{mouth_stahlhofen(d, local),
                                               mouth_icrp(d, local, breath.inspired_ml),
                                               mouth_cheng(d, local), mouth_grgic(d, local)};
      for (std::size_t c = 0; c < mouth.size(); ++c) {
        lung[c] +=
            bins.weight[i] * (one.conducting + one.alveolar) * (1 - mouth[c]) / (1 - mouth[0]);
      }
      sum.mouth_throat += bins.weight[i] * one.mouth_throat;
      sum.conducting += bins.weight[i] * one.conducting;
      sum.alveolar += bins.weight[i] * one.alveolar;
      sum.exhaled += bins.weight[i] * one.exhaled;
    }
    ASSERT_NEAR(got.at.mouth_throat, sum.mouth_throat, 1e-12);
    ASSERT_NEAR(got.at.conducting, sum.conducting, 1e-12);
    ASSERT_NEAR(got.at.alveolar, sum.alveolar, 1e-12);
    ASSERT_NEAR(got.at.exhaled, sum.exhaled, 1e-12);
    for (std::size_t c = 0; c < lung.size(); ++c) ASSERT_NEAR(got.lung[c], lung[c], 1e-12) << c;
  }
}

TEST(DoseModel, a_comparison_brackets_the_likely_share) {
  rehale::Rng rng(7);
  for (int n = 0; n < 2000; ++n) {
    const Technique t = any(rng);
    const auto got = compare(t, good_technique(t.device));
    ASSERT_TRUE(got);
    ASSERT_LE(got->share.low, got->share.likely);
    ASSERT_GE(got->share.high, got->share.likely);
    ASSERT_GE(got->share.low, 0);
  }
  const auto same = compare(good_technique(Device::soft_mist), good_technique(Device::soft_mist));
  ASSERT_TRUE(same);
  EXPECT_EQ(same->share.likely, 1);
}

TEST(DoseModel, a_made_up_factor_reaches_from_no_effect_to_twice_its_own) {
  Technique t = good_technique(Device::lever_powder);
  t.breathed_into_device = true;
  const auto got = compare(t, good_technique(t.device));
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->share.likely, k_blown_out * k_blown_fine, 1e-9);
  EXPECT_NEAR(got->share.high, 1, 1e-12);
  EXPECT_NEAR(got->share.low, got->share.likely * got->share.likely, 1e-9);
  EXPECT_TRUE(is_assumption(Lean::breathed_in));
}

TEST(DoseTechnique, devices_and_leans_have_their_own_words) {
  for (int i = 0; i < k_leans; ++i) {
    for (int j = 0; j < i; ++j) EXPECT_NE(id_of(static_cast<Lean>(i)), id_of(static_cast<Lean>(j)));
  }
  EXPECT_EQ(find_device("soft-mist"), Device::soft_mist);
  EXPECT_EQ(find_device("capsule-powder"), Device::capsule_powder);
  EXPECT_FALSE(find_device("kettle"));
  EXPECT_EQ(mean_flow_l_per_min(2500, 5), 30);
  EXPECT_EQ(mean_flow_l_per_min(2500, 0), k_flow_l_per_min.high);
}

}  // namespace
