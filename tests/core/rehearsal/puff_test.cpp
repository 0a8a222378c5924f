// What the dose model is told of a run-through. Expected numbers by hand: volume over time is the
// mean flow (2.5 L in 5 s = 30 L/min).
#include "core/rehearsal/puff.h"

#include <gtest/gtest.h>

#include "core/dose/model.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using dose::Device;
using rehearsal::Act;

dose::Technique puff(const catalog::Id& family, Device device, std::vector<Act> acts) {
  const auto& of = support::shipped_family(family);
  const auto account = rehearsal::account_of(of, {family, "c", false, 1, std::move(acts)});
  EXPECT_TRUE(account.has_value());
  const auto technique = rehearsal::first_puff(of, *account, device);
  EXPECT_TRUE(dose::estimate(technique).has_value());
  return technique;
}

const std::vector<Act> k_ready{{"open", 0, 0},
                               {"hold-upright", 1000, 1000},
                               {"shake", 2000, 7000},
                               {"breathe-out", 8000, 11000},
                               {"seal-lips", 12000, 12000}};

std::vector<Act> then(std::vector<Act> acts, const std::vector<Act>& more) {
  acts.insert(acts.end(), more.begin(), more.end());
  return acts;
}

TEST(FirstPuff, of_a_spray_has_the_times_of_the_run_through) {
  const auto p = puff("spray", Device::suspension_spray,
                      then(k_ready, {{"press", 12200, 12200},
                                     {"start-breath", 13000, 18000},
                                     {"hold-breath", 18500, 22500}}));
  const double volume = dose::good_technique(Device::suspension_spray).inspired_ml;
  EXPECT_DOUBLE_EQ(p.press_s, -.8);
  EXPECT_DOUBLE_EQ(p.hold_s, 4);
  EXPECT_DOUBLE_EQ(p.flow_l_per_min, volume * .06 / 5);
  EXPECT_TRUE(p.shaken);
  EXPECT_TRUE(p.released);
}

TEST(FirstPuff, that_was_never_pressed_stays_in_the_device) {
  const auto p =
      puff("spray", Device::suspension_spray, then(k_ready, {{"start-breath", 13000, 18000}}));
  EXPECT_FALSE(p.released);
  EXPECT_EQ(p.hold_s, 0);
}

TEST(FirstPuff, of_a_spray_with_the_cap_on_or_unshaken_says_so) {
  EXPECT_FALSE(
      puff("spray", Device::suspension_spray, {{"start-breath", 0, 4000}, {"press", 300, 300}})
          .released);
  EXPECT_FALSE(
      puff("spray", Device::suspension_spray,
           {{"open", 0, 0}, {"seal-lips", 1, 1}, {"start-breath", 10, 4000}, {"press", 300, 300}})
          .shaken);
}

std::vector<Act> lever(const std::vector<Act>& middle) {
  auto acts = then({{"open", 0, 0}, {"hold-level", 500, 500}, {"slide", 1000, 1000}}, middle);
  return acts;
}

TEST(FirstPuff, of_a_powder_keeps_the_force_a_clock_cannot_tell) {
  const auto good = dose::good_technique(Device::lever_powder);
  const auto strong = puff("powder-lever", Device::lever_powder,
                           lever({{"seal-lips", 3000, 3000}, {"breathe-in-fast", 4000, 7000}}));
  EXPECT_EQ(strong.flow_l_per_min, good.flow_l_per_min);
  EXPECT_TRUE(strong.released);
  const auto weak = puff("powder-lever", Device::lever_powder,
                         lever({{"seal-lips", 3000, 3000}, {"breathe-in-slow", 4000, 9000}}));
  EXPECT_DOUBLE_EQ(weak.flow_l_per_min, good.inspired_ml * .06 / 5);
}

TEST(FirstPuff, of_a_powder_tells_what_was_done_to_it) {
  const auto p = puff("powder-lever", Device::lever_powder,
                      lever({{"tilt", 1500, 1500},
                             {"blow-into", 2000, 3000},
                             {"seal-lips", 3500, 3500},
                             {"breathe-in-fast", 4000, 7000}}));
  EXPECT_TRUE(p.tilted);
  EXPECT_TRUE(p.breathed_into_device);
  const auto twice = puff(
      "powder-lever", Device::lever_powder,
      lever({{"slide", 2500, 2500}, {"seal-lips", 3500, 3500}, {"breathe-in-fast", 4000, 7000}}));
  EXPECT_TRUE(twice.loaded_twice);
  const auto nose = puff("powder-lever", Device::lever_powder,
                         lever({{"seal-lips", 3500, 3500}, {"breathe-in-nose", 4000, 7000}}));
  EXPECT_FALSE(nose.released);
}

TEST(FirstPuff, of_a_device_with_holes_tells_whether_they_were_free) {
  const auto covered =
      puff("soft-mist", Device::soft_mist, {{"cover-vents", 0, 0}, {"start-breath", 1000, 5000}});
  EXPECT_EQ(covered.vents_covered, .5);
  const auto cleared =
      puff("powder-cover", Device::cover_powder,
           {{"cover-vents", 0, 0}, {"clear-vents", 500, 500}, {"breathe-in-fast", 1000, 5000}});
  EXPECT_EQ(cleared.vents_covered, 0);
}

}  // namespace
