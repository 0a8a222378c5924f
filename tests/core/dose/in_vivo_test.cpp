// Lung doses against what was measured in people: facts/aerosol.md sections 6 and 9, percent of the
// metered dose. CALIBRATED rows had a constant tuned to them and prove nothing but the port;
// PREDICTED rows are tests of the model. The bands are the sheet's.
#include <gtest/gtest.h>

#include "core/dose/model.h"
#include "core/dose/mouth_throat.h"
#include "core/dose/single_breath.h"

namespace {

using namespace rehale::dose;

Fractions of(const Technique& t) {
  const auto got = estimate(t);
  EXPECT_TRUE(got);
  return got ? got->likely : Fractions{};
}
double lung(const Technique& t) { return 100 * of(t).lung(); }

Technique with(Device device, double flow, double volume, double press) {
  Technique t = good_technique(device);
  t.flow_l_per_min = flow;
  t.inspired_ml = volume;
  t.press_s = press;
  return t;
}

void within(double value, double low, double high) {
  EXPECT_GE(value, low);
  EXPECT_LE(value, high);
}

constexpr auto k_spray = Device::suspension_spray;
constexpr auto k_fine = Device::extrafine_spray;
constexpr auto k_mist = Device::soft_mist;
constexpr auto k_twist = Device::reservoir_powder;
constexpr auto k_lever = Device::lever_powder;

TEST(DoseInPeople, calibrated_good_spray_e2) {
  EXPECT_NEAR(lung(with(k_spray, 30, 2500, .3)), 22.8, .05);
  within(lung(with(k_spray, 30, 2500, .3)), 15, 30);
}
TEST(DoseInPeople, calibrated_pressed_a_second_early_e4_with_its_mouth_dose_predicted) {
  const Technique early = with(k_spray, 30, 2500, -1);
  within(lung(early), 4, 14);
  EXPECT_NEAR(100 * of(early).mouth_throat, 80.9, 2 * 1.9);  // E4: 80.9, SEM 1.9
}
TEST(DoseInPeople, logic_pressed_after_the_breath) {
  within(lung(with(k_spray, 30, 2500, 5.2)), 0, 2);
}
TEST(DoseInPeople, predicted_fast_over_slow_spray_e8_e9) {
  within(lung(with(k_spray, 90, 2500, .3)) / lung(with(k_spray, 30, 2500, .3)), .5, .9);
  // E9: 60 over 20 L/min .71; the sheet's own value is .79.
  within(lung(with(k_spray, 60, 2500, .3)) / lung(with(k_spray, 20, 2500, .3)), .5, .9);
}
TEST(DoseInPeople, predicted_late_but_within_the_breath_is_nearly_as_good_e9) {
  // E9: late over slow 1.02 +- about a quarter.
  within(lung(with(k_spray, 30, 2500, 2.5)) / lung(with(k_spray, 30, 2500, .3)), .75, 1.27);
}
TEST(DoseInPeople, direction_hold_e8_e10_e11) {
  Technique t = with(k_spray, 30, 2500, .3);
  const double ten = lung(t);
  t.hold_s = 4;
  const double four = lung(t);
  t.hold_s = 0;
  EXPECT_GT(ten, four);
  EXPECT_GT(four, lung(t));
}
TEST(DoseInPeople, by_construction_not_shaken_e24) {
  Technique t = with(k_spray, 30, 2500, .3);
  const double good = lung(t);
  t.shaken = false;
  EXPECT_NEAR(lung(t) / good, 1 - .357, .001);
}
TEST(DoseInPeople, calibrated_chamber_after_a_second_e5) {
  within(lung(with(Device::chamber_spray, 30, 2500, -1)), 16, 26);
}
TEST(DoseInPeople, calibrated_extrafine_coordinated_e6_e7) {
  const Technique t = with(k_fine, 30, 2500, .3);
  within(lung(t), 52, 65);
  within(100 * of(t).mouth_throat, 29, 33);  // E7: 29-30 healthy, 33 asthma
}
TEST(DoseInPeople, predicted_extrafine_early_and_late_e6) {
  within(lung(with(k_fine, 30, 2500, -.5)), 30, 45);  // the offset of "early" is an assumption
  within(lung(with(k_fine, 50, 2500, 1.5)), 44, 56);
}
TEST(DoseInPeople, calibrated_soft_mist_slow_e12_with_its_mouth_dose_predicted) {
  const Technique t = with(k_mist, 30, 2500, .2);
  within(lung(t), 35, 55);
  EXPECT_NEAR(100 * of(t).mouth_throat, 37.1, 3);  // E12
}
TEST(DoseInPeople, predicted_soft_mist_fast_e16) {
  Technique fast = with(k_mist, 65, 2000, .1);  // mean .65 of a peak near 100: an assumption
  fast.hold_s = 5;
  const double delivered = 1 - .219;
  within(lung(fast) / delivered, 25, 40);
  EXPECT_LT(lung(fast), lung(with(k_mist, 30, 2000, .2)));
}
TEST(DoseInPeople, calibrated_reservoir_powder_e18) {
  within(lung(with(k_twist, 58, 2000, 0)), 18, 38);
  within(lung(with(k_twist, 36, 2000, 0)), 10, 22);
}
TEST(DoseInPeople, calibrated_lever_powder_e22_and_predicted_flat_with_flow) {
  within(lung(with(k_lever, 60, 2000, 0)), 10, 20);
  // Section 7: the same effect at 30 and 60 L/min [CLA3].
  EXPECT_GT(lung(with(k_lever, 30, 2000, 0)) / lung(with(k_lever, 60, 2000, 0)), .85);
}
TEST(DoseInPeople, by_construction_tilted_lever_powder_e25) {
  Technique t = with(k_lever, 60, 2000, 0);
  const double upright = lung(t);
  t.tilted = true;
  EXPECT_NEAR(lung(t) / upright, .8, 1e-9);
  Technique twist = with(k_twist, 60, 2000, 0);
  const double before = lung(twist);
  twist.tilted = true;
  EXPECT_EQ(lung(twist), before);  // E25: the reservoir is unaffected
}
TEST(DoseInPeople, calibrated_capsule_powder_e21_with_its_mouth_dose_predicted) {
  const Technique t = with(Device::capsule_powder, 35, 1800, 0);
  within(lung(t), 14, 24);
  EXPECT_NEAR(100 * of(t).mouth_throat, 25.8, 3);  // E21: 57.5 % of the delivered 45.1 %
}
TEST(DoseInPeople, predicted_single_sizes_e23_lung_part) {
  // 31 and 67 L/min, 1.5 L and 10 s (volume and hold from memory). E23: exhaled 22 / 8 / 2 %. The
  // sheet's own values are 23.2/24.1, 2.3/2.1, 0/0; impaction misses the mouth dose.
  struct Line {
    double d, low, high;
  };
  for (const Line& line : {Line{1.5, .15, .30}, Line{3, 0, .10}, Line{6, 0, .03}}) {
    for (const double l_min : {31., 67.}) {
      const double q = l_min * k_ml_s_per_l_min;
      within(one_slice(line.d, q, 1200, {1500, q, 10, 500}).exhaled, line.low, line.high);
    }
  }
}

}  // namespace
