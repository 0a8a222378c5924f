// Counting, replacing, priming and cleaning against the worked examples of the facts sheet
// (facts/technique.md section 5 and the families' own sections).
#include "core/supply/supply.h"

#include <gtest/gtest.h>

#include "tests/support/files.h"
#include "tests/support/fixture.h"
#include "tests/support/shipped.h"

namespace rehale::supply {
namespace {

const Day k_today = day_of({2026, 11, 25});

catalog::Care care_of(const std::string& family) {
  std::vector<catalog::Finding> missing;
  const auto file = support::read_content(support::source_path("assets/"),
                                          "families/" + family + "/care.json", missing);
  auto loaded = catalog::load_care(support::shipped_library(), family, file);
  EXPECT_TRUE(loaded.value) << support::said(loaded.findings);
  return loaded.value.value_or(catalog::Care{});
}

Plan plan_of(const std::string& family, const Holding& holding) {
  const auto made = plan(care_of(family), holding, k_today);
  EXPECT_TRUE(made) << made.error().where;
  return made.value_or(Plan{});
}

std::vector<std::string> findings_of(const std::string& text) {
  const auto loaded =
      catalog::load_care(support::shipped_library(), "spray", support::exact("care.json", text));
  std::vector<std::string> rules;
  for (const auto& finding : loaded.findings) rules.push_back(finding.pointer + " " + finding.rule);
  return rules;
}

TEST(Care, slips_in_the_file_are_named_with_their_place) {
  const auto with = [](const std::string& rows) {
    return findings_of("{\"schema\":1,\"family\":\"spray\",\"numbers\":[" + rows + "]}");
  };
  const std::string doses =
      R"({"id":"doses","unit":"doses","target":[9,9],"pass":[9,9],"sources":[],"status":"M"},)";
  const auto refill = [](const std::string& rest) {
    return R"({"id":"refill","unit":"days",)" + rest + "}";
  };
  const std::string good = R"("target":[7,7],"pass":[7,7],"sources":[],"status":"CP")";
  using Rules = std::vector<std::string>;
  EXPECT_EQ(with(doses + refill(good)), Rules{});
  EXPECT_EQ(with(refill(good)), Rules{"/numbers missing-number"});
  EXPECT_EQ(with(doses + R"({"id":"wish","unit":"days",)" + good + "}," + refill(good)),
            Rules{"/numbers/1/id unknown-number"});
  EXPECT_EQ(with(doses + R"({"id":"refill","unit":"weeks",)" + good + "}"),
            Rules{"/numbers/1/unit unknown-unit"});
  EXPECT_EQ(with(doses + refill(R"("target":[7,7],"pass":[7,7],"sources":[],"status":"R")")),
            Rules{"/numbers/1/sources source-needed"});
  EXPECT_EQ(with(doses + refill(R"("target":[9,9],"pass":[7,7],"sources":[],"status":"M")")),
            Rules{"/numbers/1/target target-outside-pass"});
  EXPECT_EQ(with(doses + refill(R"("target":[-7,7],"pass":[-7,7],"sources":[],"status":"M")")),
            (Rules{"/numbers/1 out-of-range", "/numbers/1 out-of-range"}));
  EXPECT_EQ(with(doses + refill(R"("pass":[7,7],"sources":[],"status":"M")")),
            Rules{"/numbers/1 missing-number"});
  EXPECT_EQ(with(doses + refill(good) + "," + refill(good)), Rules{"/numbers/2/id duplicate-id"});
}

TEST(Supply, lasts_as_long_as_the_worked_examples_say) {
  EXPECT_EQ(plan_of("spray", {.left = 120, .a_day = 4}).days_left, 30);   // 2 puffs twice a day
  EXPECT_EQ(plan_of("spray", {.left = 200, .a_day = 2}).days_left, 100);  // on average
  EXPECT_EQ(plan_of("powder-lever", {.left = 60, .a_day = 2}).days_left, 30);
  EXPECT_EQ(plan_of("powder-cover", {.left = 30, .a_day = 1}).days_left, 30);
  EXPECT_EQ(plan_of("soft-mist", {.left = 60, .a_day = 2}).days_left, 30);
  EXPECT_EQ(plan_of("soft-mist", {.left = 60, .a_day = 1}).days_left, 60);
  EXPECT_EQ(plan_of("spray", {.left = 7, .a_day = 4}).days_left, 1);  // whole days only
}

TEST(Supply, the_earliest_of_counter_window_and_expiry_decides) {
  // 30 days by the counter, the month after opening is over in 20
  auto plan = plan_of("powder-lever", {.left = 60, .a_day = 2, .opened = k_today - 10});
  EXPECT_EQ(plan.limit, Limit::in_use);
  EXPECT_EQ(plan.replace_by, k_today + 20);
  EXPECT_EQ(plan.left_over, 20);
  EXPECT_EQ(plan.refill_on, k_today + 13);  // 7 days before
  EXPECT_FALSE(plan.refill_now);
  plan =
      plan_of("powder-lever", {.left = 60, .a_day = 2, .opened = k_today, .expiry = k_today + 3});
  EXPECT_EQ(plan.limit, Limit::expiry);
  EXPECT_EQ(plan.refill_on, k_today);
  EXPECT_TRUE(plan.refill_now);
  plan = plan_of("powder-cover", {.left = 30, .a_day = 1, .opened = k_today});
  EXPECT_EQ(plan.limit, Limit::counter);  // 30 days of 42
  EXPECT_EQ(plan.left_over, 0);
}

TEST(Supply, months_after_set_up_are_calendar_months) {
  const Day opened = day_of({2026, 11, 1});
  EXPECT_EQ(plan_of("soft-mist", {.left = 60, .opened = opened}).replace_by, day_of({2027, 2, 1}));
}

TEST(Supply, the_leaflet_wins) {
  Holding holding{.left = 60, .a_day = 1, .opened = k_today};
  holding.leaflet.in_use_days = 42;
  EXPECT_EQ(plan_of("powder-lever", holding).replace_by, k_today + 42);
  EXPECT_EQ(plan_of("powder-lever", holding).left_over, 18);
}

TEST(Supply, an_empty_or_outdated_one_is_for_replacing_now) {
  EXPECT_TRUE(plan_of("spray", {.left = 0}).replace_now);
  EXPECT_TRUE(plan_of("spray", {.left = 3, .a_day = 4}).replace_now);
  const auto old = plan_of("powder-lever", {.left = 60, .a_day = 2, .opened = k_today - 40});
  EXPECT_TRUE(old.replace_now);
  EXPECT_EQ(old.left_over, 60);
  EXPECT_EQ(old.refill_on, k_today);
}

TEST(Supply, as_needed_is_planned_on_the_counter_not_on_days) {
  auto plan = plan_of("spray", {.left = 41});
  EXPECT_FALSE(plan.days_left);
  EXPECT_FALSE(plan.replace_by);
  EXPECT_FALSE(plan.refill_now);
  plan = plan_of("spray", {.left = 40});  // 20 to 40 puffs left: common practice
  EXPECT_TRUE(plan.refill_now);
}

TEST(Supply, what_cannot_be_is_named) {
  const auto where = [](const Holding& holding) {
    const auto made = plan(care_of("spray"), holding, k_today);
    return made ? "planned" : made.error().where;
  };
  EXPECT_EQ(where({.left = -1}), "left");
  EXPECT_EQ(where({.left = 1, .a_day = 41}), "a_day");
  EXPECT_EQ(where({.left = 1, .opened = k_today + 1}), "opened");
  EXPECT_EQ(where({.left = 1, .expiry = -5}), "expiry");
}

// expected = start - priming - daily use times days; a gap over 10 % either way is asked about.
TEST(Supply, a_counter_that_does_not_fit_the_days_is_asked_about) {
  const auto ask = [](int left) {
    return compare_use({.start = 120, .a_day = 4, .left = left, .opened = k_today - 20}, k_today);
  };
  EXPECT_EQ(ask(40)->expected, 40);
  EXPECT_EQ(ask(40)->ask, Ask::nothing);
  EXPECT_EQ(ask(48)->ask, Ask::nothing);
  EXPECT_EQ(ask(49)->ask, Ask::doses_missed);
  EXPECT_EQ(ask(31)->ask, Ask::used_more);
  EXPECT_EQ(compare_use({.start = 124, .primed = 4, .a_day = 4, .left = 116, .opened = k_today - 1},
                        k_today)
                ->ask,
            Ask::nothing);
}

TEST(Priming, powder_needs_none_and_sprays_follow_their_idle_days) {
  EXPECT_EQ(priming(care_of("powder-lever"), {}, {.is_new = true}).need, Need::no);
  const auto spray = care_of("spray");
  EXPECT_EQ(priming(spray, {}, {.is_new = true}).sprays, 4);
  EXPECT_EQ(priming(spray, {}, {.days_unused = 3}).need, Need::no);
  EXPECT_EQ(priming(spray, {}, {.days_unused = 4}).need, Need::see_leaflet);  // leaflets: 3-28 days
  EXPECT_EQ(priming(spray, {}, {.days_unused = 29}).need, Need::yes);
  EXPECT_EQ(priming(spray, {}, {.washed = true}).sprays, 2);
  const Leaflet leaflet{.prime_idle = 3, .prime_idle_after_days = 7};
  EXPECT_EQ(priming(spray, leaflet, {.days_unused = 7}).need, Need::no);
  EXPECT_EQ(priming(spray, leaflet, {.days_unused = 8}).need, Need::yes);
  EXPECT_EQ(priming(spray, leaflet, {.days_unused = 8}).sprays, 3);
}

// smi_prime: until mist and 3 more; over 3 days (elsewhere 7) unused 1; over 21 days all again.
TEST(Priming, a_soft_mist_goes_by_3_7_and_21_days) {
  const auto mist = care_of("soft-mist");
  const auto fresh = priming(mist, {}, {.is_new = true});
  EXPECT_EQ(fresh.sprays, 3);
  EXPECT_TRUE(fresh.after_mist);
  EXPECT_EQ(priming(mist, {}, {.days_unused = 3}).need, Need::no);
  EXPECT_EQ(priming(mist, {}, {.days_unused = 5}).need, Need::see_leaflet);
  EXPECT_EQ(priming(mist, {}, {.days_unused = 8}).need, Need::yes);
  EXPECT_EQ(priming(mist, {}, {.days_unused = 21}).sprays, 1);
  EXPECT_EQ(priming(mist, {}, {.days_unused = 22}).sprays, 3);
}

TEST(Cleaning, comes_weekly_where_the_family_has_it) {
  using Days = std::vector<Day>;
  EXPECT_EQ(cleaning_days(care_of("spray"), {}, k_today - 2, k_today, 3),
            (Days{k_today + 5, k_today + 12, k_today + 19}));
  EXPECT_EQ(cleaning_days(care_of("spray"), {}, k_today - 30, k_today, 1), Days{k_today});
  EXPECT_EQ(cleaning_days(care_of("soft-mist"), {.clean_every_days = 3}, {}, k_today, 2),
            (Days{k_today, k_today + 3}));
  EXPECT_EQ(cleaning_days(care_of("powder-lever"), {}, {}, k_today, 3), Days{});
}

// 3 cans of 200 a year are only 1.6 puffs a day (facts sheet); the flag is 3 a year (Nwa20).
TEST(Relievers, three_a_year_call_for_a_talk_with_the_care_team) {
  const auto& library = support::shipped_library();
  EXPECT_FALSE(talk_to_care_team(library, 2.9));
  EXPECT_TRUE(talk_to_care_team(library, 3));
  EXPECT_NEAR(*relievers_a_year(600, 365, 200), 3, .01);
  EXPECT_NEAR(*relievers_a_year(16 * 365 / 10, 365, 200), 3, .1);  // 1.6 puffs a day
  EXPECT_FALSE(relievers_a_year(30, 7, 200));                      // too short to tell
}

TEST(Methods, floating_weighing_and_shaking_are_refused_with_the_reason) {
  EXPECT_TRUE(allow(Method::read_counter));
  EXPECT_TRUE(allow(Method::count_doses));
  for (const auto& [method, code] : {std::pair{Method::float_it, "float-refused"},
                                     {Method::weigh_it, "weigh-refused"},
                                     {Method::shake_it, "shake-refused"}}) {
    const auto allowed = allow(method);
    ASSERT_FALSE(allowed);
    EXPECT_EQ(allowed.error().code, code);
    EXPECT_FALSE(allowed.error().where.empty());
    EXPECT_NE(allowed.error().detail.find("counter"), std::string::npos);
  }
}

}  // namespace
}  // namespace rehale::supply
