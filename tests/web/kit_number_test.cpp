// The stepper and the timing pad, on a clock of the test's own.
#include <gtest/gtest.h>

#include <limits>

#include "tests/web/kit_rig.h"

namespace rehale {
namespace {

using Phase = kit::Timing::Phase;
using rig::Role;

struct KitStepper : testing::Test {
  double value = 10;
  void start(double step = 1) {
    rig::open({}, [this, step](kit::Ui& ui) {
      kit::begin_screen(ui, {.id = "s", .title = "S"});
      value = kit::stepper(
          ui, {.id = "n", .name = "Days left", .unit = "days", .min = 0, .max = 12, .step = step},
          value);
      kit::end_screen(ui);
    });
  }
  void type(double number) {
    shell::null::act({shell::MirrorAction::Kind::set_number, "n", number});
    rig::settle();
  }
};

TEST_F(KitStepper, finger_and_mirror_step_alike_and_stop_at_the_ends) {
  start();
  rig::tap(rig::find(Role::button, "More: Days left"));
  EXPECT_EQ(value, 11);
  rig::press(rig::find(Role::button, "More: Days left"));
  rig::press(rig::find(Role::button, "More: Days left"));
  EXPECT_EQ(value, 12);
  EXPECT_TRUE(rig::find(Role::button, "More: Days left").disabled);
  rig::tap(rig::find(Role::button, "Less: Days left"));
  EXPECT_EQ(value, 11);
}

TEST_F(KitStepper, a_typed_number_is_kept_in_range_and_on_a_step) {
  start(2);
  type(7.2);
  EXPECT_EQ(value, 8);
  type(400);
  EXPECT_EQ(value, 12);
  type(-3);
  EXPECT_EQ(value, 0);
  const auto& spin = rig::find(Role::spin, "Days left");
  EXPECT_EQ(spin.value, "0 days");
  EXPECT_EQ(spin.max, 12);
  EXPECT_EQ(spin.step, 2);
}

struct KitTiming : testing::Test {
  kit::Timing timing;
  void start(bool still, double longest_ms = 60'000) {
    rig::open({.reduced_motion = still}, [this, longest_ms](kit::Ui& ui) {
      kit::begin_screen(ui, {.id = "s", .title = "S"});
      timing = kit::timing_pad(
          ui, {.id = "pad", .name = "Hold your breath", .longest_ms = longest_ms}, timing);
      kit::end_screen(ui);
    });
  }
};

TEST_F(KitTiming, measures_between_two_taps_on_the_given_clock) {
  start(true);
  rig::tap(rig::find(Role::button, "Tap to start"));
  EXPECT_EQ(timing.phase, Phase::running);
  const double started = timing.started_ms;
  rig::pass(7'300);
  rig::tap(rig::find(Role::button, "Tap to stop"));
  EXPECT_EQ(timing.phase, Phase::done);
  EXPECT_NEAR(timing.measured_ms, rig::now() - started, 64) << "to the frame that saw the tap";
  EXPECT_EQ(rig::find_id("pad/result").name, "7 seconds");
  EXPECT_EQ(rig::said(), "The timer runs. Tap to stop.|7 seconds");
  rig::press(rig::find(Role::button, "Do it again"));
  EXPECT_EQ(timing.phase, Phase::running);
}

TEST_F(KitTiming, by_keyboard_it_measures_the_same) {
  start(true);
  rig::press(rig::find(Role::button, "Tap to start"));
  rig::pass(3'000);
  rig::press(rig::find(Role::button, "Tap to stop"));
  EXPECT_NEAR(timing.measured_ms, 3'000, 64);
}

TEST_F(KitTiming, with_reduced_motion_it_draws_once_a_second) {
  start(true);
  rig::press(rig::find(Role::button, "Tap to start"));
  EXPECT_EQ(shell::null::frames_wanted(), 0);
  EXPECT_NEAR(shell::null::next_deadline_ms(), timing.started_ms + 1'000, 1e-6);
  EXPECT_LE(rig::pass(5'000), 6);
}

TEST_F(KitTiming, the_ring_asks_for_calm_frames_only_while_it_runs) {
  start(false);
  EXPECT_EQ(shell::null::next_deadline_ms(), std::numeric_limits<double>::infinity());
  rig::press(rig::find(Role::button, "Tap to start"));
  const int frames = rig::pass(2'000);
  EXPECT_GE(frames, 30) << "it moves";
  EXPECT_LE(frames, 64) << "30 a second are enough";
  rig::press(rig::find(Role::button, "Tap to stop"));
  rig::pass(2'000);
  EXPECT_EQ(shell::null::frames_wanted(), 0);
  EXPECT_EQ(shell::null::next_deadline_ms(), std::numeric_limits<double>::infinity());
}

TEST_F(KitTiming, it_stops_by_itself_at_the_longest) {
  start(true, 5'000);
  rig::press(rig::find(Role::button, "Tap to start"));
  rig::pass(20'000);
  EXPECT_EQ(timing.phase, Phase::done);
  EXPECT_EQ(timing.measured_ms, 5'000);
}

}  // namespace
}  // namespace rehale
