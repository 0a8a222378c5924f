// Counter and care on the real screens with the null host: what the person sets, the days and words
// that follow, what is carried. The days are the worked examples of facts/technique.md section 5,
// counted with Python's datetime.
#include <gtest/gtest.h>

#include "tests/support/courses.h"
#include "tests/web/page_rig.h"
#include "web/shell/host_null.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using exchange::CareState;
using rig::all_told;
using rig::app;
using rig::k_day;
using rig::open_page;
using rig::press_id;
using rig::told;
using rig::type;
using shell::Role;

// A link with these numbers, opened on that day.
void come_back(const CareState& state, Day today = k_day, const std::string& language = "en") {
  open_page({.care = *exchange::write_care(state), .language = language, .today = today});
  ASSERT_EQ(app().where, Where::care_plan) << all_told();
}

CareState told(const std::string& family, int left, int doses_a_day = 1) {
  return {.family = family, .counted = k_day, .left = left, .doses_a_day = doses_a_day};
}

TEST(CareScreens, a_person_sets_what_they_see_and_gets_the_days) {
  open_page({.family = "spray"});
  ASSERT_EQ(app().where, Where::ready);
  press_id("care");
  ASSERT_EQ(app().where, Where::care);
  type("left", 120);
  type("doses-a-day", 2);
  type("puffs", 2);
  press_id("show");
  ASSERT_EQ(app().where, Where::care_plan);
  // 120 puffs at 2 twice a day: 30 days (section 5); 7 days before that to ask.
  EXPECT_EQ(told("replace-title"), "Use a new one from 25 December 2026");
  EXPECT_EQ(told("replace-1"), "At 4 puffs a day, the counter gets you to then.");
  EXPECT_EQ(told("refill-title"), "Ask for the new one on 18 December 2026");
  press_id("done");
  EXPECT_EQ(app().where, Where::ready);
  press_id("care");  // told already: the days at once
  EXPECT_EQ(app().where, Where::care_plan);
  press_id("change");
  EXPECT_EQ(app().where, Where::care);
  EXPECT_EQ(null::find_id("left")->number, 120);
}

TEST(CareScreens, the_earliest_of_counter_window_and_last_date_is_named) {
  auto lever = told("powder-lever", 60, 2);
  lever.opened = k_day - 10;  // 30 days once open, by its care.json
  come_back(lever);
  EXPECT_EQ(told("replace-title"), "Use a new one from 15 December 2026");
  EXPECT_EQ(told("replace-1"), "Once open, it is good for 30 days.");
  EXPECT_EQ(told("replace-2"),
            "About 20 doses will still be inside by then. They are not for use any more.");
  EXPECT_EQ(told("replace-3"), "By the counter alone it would last until 25 December 2026.");
  lever.expiry = k_day + 3;
  come_back(lever);
  EXPECT_EQ(told("replace-title"), "Use a new one from 28 November 2026");
  EXPECT_EQ(told("replace-1"), "It is the last date on it.");
  EXPECT_EQ(told("refill-title"), "Ask for a new one now");
  EXPECT_EQ(told("refill-1"), "This one lasts 3 days more.");
  lever.expiry = k_day;
  come_back(lever);
  EXPECT_EQ(told("replace-title"), "It is time for a new one");
  auto mist = told("soft-mist", 60);
  mist.opened = day_of({2026, 11, 25});
  come_back(mist);  // 60 days at 1 a day, 3 months once open
  EXPECT_EQ(told("replace-title"), "Use a new one from 24 January 2027");
  come_back(told("spray", 0));
  EXPECT_EQ(told("replace-1"), "The counter shows 0. What still comes out may hold no medicine.");
}

TEST(CareScreens, the_leaflet_wins_and_the_screen_says_so) {
  auto lever = told("powder-lever", 60);
  lever.opened = k_day;
  come_back(lever);
  EXPECT_EQ(told("leaflet"), "If your leaflet says something else, your leaflet wins.");
  lever.leaflet.in_use_days = 42;
  come_back(lever);
  EXPECT_EQ(told("replace-title"), "Use a new one from 6 January 2027");
  EXPECT_EQ(told("leaflet"), "Your leaflet has other numbers. It wins: they are used here.");
  press_id("sources");
  const std::string all = all_told();
  EXPECT_NE(all.find("Days of use once open: 42. Your leaflet, as you told us."),
            std::string::npos);
  EXPECT_NE(
      all.find(
          "Days before the end to ask for a new one: 7. Leaflets say 0 to 14. Common practice."),
      std::string::npos)
      << all;
  EXPECT_NE(all.find("Lbl: "), std::string::npos);
}

TEST(CareScreens, sprays_to_the_air_follow_the_last_use) {
  const auto prime = [](auto&& change) {
    auto spray = told("spray", 100);
    change(spray);
    come_back(spray);
    return told("prime-1");
  };
  EXPECT_EQ(prime([](auto&) {}),
            "Set when you last used it. Then we can tell if it needs sprays to the air.");
  EXPECT_EQ(prime([](auto& s) { s.is_new = true; }),
            "It is new. Spray 4 times to the air first, one by one.");
  EXPECT_EQ(prime([](auto& s) { s.used = k_day - 1; }), "It needs no sprays to the air now.");
  EXPECT_EQ(prime([](auto& s) { s.used = k_day - 10; }),
            "It was not used for 10 days. See your leaflet: it may want sprays to the air.");
  EXPECT_EQ(prime([](auto& s) { s.used = k_day - 30; }),
            "It was not used for 30 days. Spray 2 times to the air first.");
  EXPECT_EQ(prime([](auto& s) {
              s.used = k_day - 2;
              s.cleaned = k_day - 1;
            }),
            "You washed it after the last use. Spray 2 times to the air first.");
  auto mist = told("soft-mist", 40);
  mist.used = k_day - 22;
  come_back(mist);
  EXPECT_EQ(told("prime-2"), "Spray to the ground until you see mist. Then spray 3 times more.");
  come_back(told("powder-cover", 30));
  EXPECT_EQ(null::find_id("prime-title"), nullptr);
  EXPECT_EQ(told("clean-1"), "Wipe the mouthpiece with a dry tissue. Use no water.");
}

TEST(CareScreens, cleaning_has_its_days_and_a_can_is_not_floated) {
  auto spray = told("spray", 100);
  spray.cleaned = k_day - 3;
  come_back(spray);
  EXPECT_EQ(told("clean-title"), "Clean it on 29 November 2026");
  EXPECT_EQ(told("clean-1"), "Do it every 7 days. Then on 6 December 2026 and 13 December 2026.");
  press_id("ways");
  EXPECT_NE(all_told().find("Not in water: cans float in many ways, full or empty."),
            std::string::npos);
  come_back(told("powder-lever", 60));
  EXPECT_EQ(null::find_id("ways"), nullptr);  // no can
}

TEST(CareScreens, much_of_a_reliever_is_a_talk_and_never_a_change_of_medicine) {
  auto spray = told("spray", 140, 0);
  spray.full = 200;
  spray.opened = k_day - 100;  // 60 puffs in 100 days: 1.1 a year
  come_back(spray);
  EXPECT_EQ(null::find_id("overuse-title"), nullptr);
  EXPECT_EQ(told("refill-title"), "Ask for a new one when 40 puffs are left");
  spray.left = 20;  // 180 in 100 days: 3.3 a year; 3 is the flag (Nwa20)
  come_back(spray);
  EXPECT_EQ(told("overuse-title"), "You use a lot of it. Talk to your care team soon.");
  EXPECT_EQ(told("overuse-1"),
            "At this pace you use 3 inhalers or more in a year. From 3 on, it is good to talk.");
  EXPECT_EQ(told("refill-title"), "Ask for a new one now");
  spray.opened = k_day - 10;  // within 10 days: told as if they had been 28
  come_back(spray);
  EXPECT_EQ(told("overuse-1"),
            "At this pace you use 11 inhalers or more in a year. From 3 on, it is good to talk.");
}

TEST(CareScreens, what_comes_back_is_counted_on_and_held_against_the_counter) {
  const auto spray = told("spray", 100, 2);
  come_back(spray, k_day + 20);  // 40 due since
  EXPECT_EQ(told("came-back"),
            "On 25 November 2026 the counter showed 100. By plan it is at about 60 now. Please "
            "look again.");
  press_id("change");
  EXPECT_EQ(null::find_id("left")->number, 60);
  type("left", 80);  // over 10 % of 40 more than planned
  press_id("show");
  EXPECT_EQ(told("compared-1"),
            "By plan the counter would show about 60. It shows more. Were some doses missed?");
  EXPECT_EQ(null::find_id("came-back"), nullptr);
  press_id("change");
  type("left", 40);
  press_id("show");
  EXPECT_EQ(told("compared-1"),
            "By plan the counter would show about 60. It shows less. Talk to your care team.");
  press_id("change");
  type("left", 59);
  press_id("show");
  EXPECT_EQ(null::find_id("compared-1"), nullptr);
}

TEST(CareScreens, a_link_and_a_file_bring_all_of_it_back) {
  auto mist = told("soft-mist", 31, 2);
  mist.opened = k_day - 5;
  mist.leaflet.clean_every_days = 14;
  come_back(mist);
  null::set_reply("copy", "");
  press_id("link");
  const std::string link = null::asked("copy");
  ASSERT_EQ(link.find("https://page.invalid/rehale/#c=C1"), 0U);
  EXPECT_LE(link.size(), 400U);
  EXPECT_EQ(exchange::read_care(link.substr(link.find("C1"))).value(), mist);
  null::set_reply("save", "");
  press_id("save");
  const std::string saved = null::asked("save");
  ASSERT_EQ(saved.find("rehale-inhaler.json\n{"), 0U) << saved;
  open_page({.family = "soft-mist"});
  press_id("care");
  null::set_reply("open", saved.substr(saved.find('\n') + 1));
  press_id("open");
  EXPECT_EQ(app().where, Where::care_plan);
  EXPECT_EQ(app().care.told, mist);
}

TEST(CareScreens, files_and_links_that_are_none_are_told) {
  open_page({.family = "spray"});
  press_id("care");
  for (const auto& [text, message] :
       {std::pair("{}", "That file has no inhaler numbers in it."), std::pair("", "")}) {
    null::set_reply("open", text);
    press_id("open");
    EXPECT_EQ(app().where, Where::care);
    EXPECT_EQ(told("message"), message);
  }
  null::set_reply("open", *exchange::write_care(told("soft-mist", 3)));
  press_id("open");
  EXPECT_EQ(told("message"), "Those numbers are of another kind.");
  const std::string good = *exchange::write_care(told("spray", 3));
  std::string newer = good;
  newer[1] = '9';
  for (const auto& [code, title] :
       {std::pair(good.substr(1), "trouble/link"), std::pair(good + "A", "trouble/link"),
        std::pair(newer, "trouble/link-newer"), std::pair(std::string(5000, 'C'), "trouble/link"),
        std::pair(*exchange::write_care(told("kettle", 3)), "trouble/link-other")}) {
    open_page({.care = code});
    ASSERT_EQ(app().where, Where::trouble) << code.substr(0, 30);
    EXPECT_EQ(app().trouble.title, title) << code.substr(0, 30);
  }
}

TEST(CareScreens, months_without_such_a_day_and_days_to_come_are_put_right) {
  open_page({.family = "spray"});
  press_id("care");
  press_id("opened");
  EXPECT_EQ(told("opened-words"), "25 November 2026");
  type("opened-m", 12);  // not yet: last year's
  EXPECT_EQ(told("opened-words"), "25 December 2025");
  type("opened-d", 31);
  type("opened-m", 2);  // a last day stays a last day
  EXPECT_EQ(told("opened-words"), "28 February 2025");
  type("opened-y", 2026);
  EXPECT_EQ(told("opened-words"), "28 February 2026");
  EXPECT_EQ(app().care.told.opened, day_of({2026, 2, 28}));
  press_id("opened");
  EXPECT_FALSE(app().care.told.opened);
}

TEST(CareScreens, every_family_and_language_has_all_its_words) {
  for (const auto& family : support::shipped_families()) {
    for (const char* language : {"en", "es", "pt"}) {
      for (const bool needed : {false, true}) {
        auto state = told(family, 21, needed && family == "spray" ? 0 : 1);
        state.full = 60;
        state.opened = k_day - 5;
        state.used = k_day - 40;
        state.leaflet.clean_every_days = 9;
        come_back(state, k_day + 3, language);
        press_id("sources");
        for (const auto& node : null::mirror().nodes) {
          EXPECT_EQ(node.name.find('{'), std::string::npos) << node.id << node.name;
          const bool is_text = node.role == Role::paragraph || node.role == Role::list_item;
          EXPECT_FALSE(is_text && (node.name.empty() || node.name.find("  ") != std::string::npos))
              << language << ' ' << family << ' ' << node.id << ": " << node.name;
        }
        press_id("change");
        press_id("leaflet");
        EXPECT_EQ(all_told().find('{'), std::string::npos);
      }
    }
  }
  come_back(told("spray", 120, 2), k_day, "es");
  EXPECT_EQ(told("replace-title"), "Use uno nuevo desde el 24 de enero de 2027");
  come_back(told("spray", 120, 2), k_day, "pt");
  EXPECT_EQ(told("replace-title"), "Use um novo a partir de 24 de janeiro de 2027");
}

}  // namespace
}  // namespace rehale::screens
