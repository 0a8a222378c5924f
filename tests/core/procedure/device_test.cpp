// The virtual device on the bubble pipe of tests/fixtures/family-ok (invented), and on small
// devices written here. Expected runs are worked out by hand from the device's own text.
#include "core/procedure/device.h"

#include <gtest/gtest.h>

#include <string>

#include "core/base/rng.h"
#include "core/catalog/lookup.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using catalog::Id;
using procedure::Doses;
using procedure::Lapse;
using procedure::RunReport;

const catalog::Family& pipe() {
  static const catalog::Family family = support::ok_family();
  return family;
}

RunReport after(const std::vector<Id>& actions) {
  const auto report = procedure::run(pipe(), actions);
  EXPECT_TRUE(report.has_value());
  return report.value_or(RunReport{});
}

// "2 load need tilt hold-level", "1 load rule open-first open-lid", "3 blow-out waste
// blow-out-first".
std::vector<std::string> told(const RunReport& report) {
  std::vector<std::string> all;
  for (const auto& lapse : report.lapses) {
    const char* kind = lapse.kind == Lapse::Kind::need_broken   ? " need "
                       : lapse.kind == Lapse::Kind::rule_broken ? " rule "
                                                                : " waste";
    all.push_back(std::to_string(lapse.index) + ' ' + lapse.action + kind + lapse.variable +
                  lapse.rule + ' ' + lapse.technique + (lapse.blocked ? " (blocked)" : ""));
  }
  return all;
}

using Told = std::vector<std::string>;

Id value(const RunReport& report, const Id& variable) {
  const auto index = static_cast<std::size_t>(catalog::index_of(pipe().variables, variable));
  return pipe().variables[index].values[static_cast<std::size_t>(report.state.values[index])];
}

TEST(Device, starts_at_rest_and_full) {
  const auto report = after({});
  EXPECT_EQ(report.state, procedure::start_state(pipe()));
  EXPECT_EQ(report.state.doses, (Doses{12, 0, 0, 0}));
  EXPECT_EQ(value(report, "lid"), "shut");
  EXPECT_TRUE(report.lapses.empty());
}

TEST(Device, a_dose_done_well_is_inhaled_without_a_lapse) {
  const auto report = after(pipe().ideal);
  EXPECT_EQ(told(report), Told{});
  EXPECT_EQ(report.state.doses, (Doses{11, 0, 1, 0}));
  EXPECT_EQ(value(report, "lungs"), "full");
  EXPECT_EQ(value(report, "lid"), "shut");
}

TEST(Device, a_blocked_action_has_no_effect_but_is_reported) {
  const auto report = after({"load"});
  EXPECT_EQ(told(report), (Told{"0 load need lid open-lid (blocked)"}));
  EXPECT_EQ(report.state, procedure::start_state(pipe()));
}

TEST(Device, a_need_that_does_not_block_is_reported_and_the_effect_happens) {
  const auto report = after({"open-lid", "tip-over", "load"});
  EXPECT_EQ(told(report), (Told{"2 load need tilt hold-level"}));
  EXPECT_EQ(report.state.doses, (Doses{11, 1, 0, 0}));
}

TEST(Device, every_broken_need_is_reported) {
  EXPECT_EQ(told(after({"breathe-in"})),
            (Told{"0 breathe-in need lungs blow-out-first", "0 breathe-in need lips seal-lips"}));
}

TEST(Device, loading_twice_wastes_the_first_dose) {
  const auto report = after({"open-lid", "load", "load", "blow-out", "seal-lips", "breathe-in"});
  EXPECT_EQ(told(report), (Told{"2 load waste load-once"}));
  EXPECT_EQ(report.state.doses, (Doses{10, 0, 1, 1}));
}

TEST(Device, effects_are_judged_on_the_state_before_the_action) {
  // breathing in with open lips wastes; the same action sets the lungs full
  const auto report = after({"open-lid", "load", "blow-out", "breathe-in"});
  EXPECT_EQ(report.state.doses, (Doses{11, 0, 0, 1}));
  EXPECT_EQ(value(report, "lungs"), "full");
  EXPECT_EQ(told(report),
            (Told{"3 breathe-in need lips seal-lips", "3 breathe-in waste seal-lips"}));
}

TEST(Device, an_order_rule_is_told_once_at_the_action_that_came_too_early) {
  const auto report = after({"open-lid", "seal-lips", "load", "blow-out", "blow-out"});
  EXPECT_EQ(told(report), (Told{"1 seal-lips rule blow-first blow-out-first",
                                "3 blow-out waste blow-out-first"}));
}

TEST(Device, leaving_an_action_out_breaks_no_order_rule) {
  EXPECT_EQ(told(after({"open-lid", "seal-lips"})), Told{});
}

TEST(Device, a_blocked_attempt_counts_for_the_order) {
  EXPECT_EQ(told(after({"load", "open-lid", "load"})),
            (Told{"0 load need lid open-lid (blocked)", "0 load rule open-first open-lid"}));
}

TEST(Device, a_second_dose_is_judged_anew) {
  auto twice = pipe().ideal;
  twice.insert(twice.end(), pipe().ideal.begin(), pipe().ideal.end());
  EXPECT_EQ(told(after(twice)), Told{});
  EXPECT_EQ(after(twice).state.doses, (Doses{10, 0, 2, 0}));

  auto careless = pipe().ideal;  // second dose: lips before the out-breath
  for (const char* action : {"open-lid", "load", "seal-lips", "blow-out", "breathe-in"})
    careless.push_back(action);
  EXPECT_EQ(told(after(careless)), (Told{"9 seal-lips rule blow-first blow-out-first",
                                         "10 blow-out waste blow-out-first"}));
}

TEST(Device, a_second_dose_need_not_repeat_what_still_holds) {
  // the lid stays open: no second open-lid, and loading after breathing in is the next dose, not
  // disorder
  EXPECT_EQ(
      told(after({"open-lid", "load", "blow-out", "seal-lips", "breathe-in", "hold-breath", "load",
                  "blow-out", "seal-lips", "breathe-in", "hold-breath", "close-lid"})),
      Told{});
}

TEST(Device, actions_repeated_before_the_dose_is_spent_stay_in_its_cycle) {
  EXPECT_EQ(told(after({"blow-out", "open-lid", "blow-out", "load", "blow-out", "seal-lips",
                        "breathe-in"})),
            Told{});
}

TEST(Device, a_repeat_before_the_dose_is_spent_does_not_make_the_order_good_or_bad_anew) {
  EXPECT_EQ(told(after({"open-lid", "seal-lips", "seal-lips", "blow-out"})),
            Told{"1 seal-lips rule blow-first blow-out-first"});
}

TEST(Device, an_empty_device_loads_nothing_and_loses_nothing) {
  auto family = pipe();
  family.doses_at_start = 1;
  const auto report =
      procedure::run(family, std::vector<Id>{"open-lid", "load", "load", "blow-out", "seal-lips",
                                             "breathe-in", "breathe-in"});
  ASSERT_TRUE(report.has_value());
  EXPECT_EQ(report->state.doses, (Doses{0, 0, 1, 0}));
}

TEST(Device, an_unknown_action_is_an_error_with_its_place) {
  const auto report = procedure::run(pipe(), std::vector<Id>{"open-lid", "dance"});
  ASSERT_FALSE(report.has_value());
  EXPECT_EQ(report.error().code, "unknown-action");
  EXPECT_EQ(report.error().where, "1");
}

TEST(Device, no_dose_is_ever_made_or_lost_unseen) {
  Rng rng(7);
  for (int round = 0; round < 2000; ++round) {
    std::vector<Id> actions;
    for (int i = 0; i < 40; ++i)
      actions.push_back(
          pipe().actions[static_cast<std::size_t>(rng.below(pipe().actions.size()))].id);
    const auto report = after(actions);
    const auto& doses = report.state.doses;
    EXPECT_EQ(doses.left + doses.ready + doses.inhaled + doses.wasted, 12);
    EXPECT_GE(doses.left, 0);
    EXPECT_TRUE(doses.ready == 0 || doses.ready == 1);
    int wasted = 0, last = 0;
    for (const auto& lapse : report.lapses) {
      wasted += lapse.kind == Lapse::Kind::dose_wasted ? 1 : 0;
      EXPECT_GE(lapse.index, last);
      last = lapse.index;
    }
    EXPECT_EQ(wasted, doses.wasted);
  }
}

}  // namespace
