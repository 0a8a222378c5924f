// A shared device on the real screens with the null host and its clock: the start, who is still
// there, starting again, what is counted and never kept, what staff see, the minute of cleaning.
// Times: facts/users.md section 3; WCAG 2.2, 2.2.1 (at least 20 s, ten times and more).
#include "web/screens/kiosk.h"

#include <gtest/gtest.h>

#include "tests/support/courses.h"
#include "tests/web/page_rig.h"
#include "web/shell/host_null.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using rig::app;
using rig::press_id;
using rig::told;

constexpr double k_second_ms = 1000;

void open_kiosk(const std::string& counted = "", const std::string& settings = "") {
  rig::open_with([&] {
    null::set_option(shell::k_option_kiosk, "1");
    null::set_option(shell::k_option_counted, counted);
    null::set_option(shell::k_option_kiosk_settings, settings);
    null::set_reply("keep", "");
  });
}

void wait(double seconds) {
  null::set_now(shell::now_ms() + seconds * k_second_ms);
  null::frame();
  null::settle();
}

// As web/js/kiosk.js tells of a finger or a key.
void touch() {
  static int times = 0;
  null::set_option(shell::k_option_touched, std::to_string(++times));
  shell::redraw();
  null::settle();
}

void take_check() {
  touch();
  press_id("go");
  press_id("devices/spray");
  null::settle();
  press_id("go");
  while (app().where == Where::question) {
    app().give({.unsure = true});
    null::settle();
  }
  shell::redraw();
  null::settle();
}

TEST(Kiosk, presence_by_its_limits) {
  EXPECT_EQ(presence(89'999, k_idle), Presence::here);
  EXPECT_EQ(presence(90'000, k_idle), Presence::asked);
  EXPECT_EQ(presence(119'999, k_idle), Presence::asked);
  EXPECT_EQ(presence(120'000, k_idle), Presence::gone);
  EXPECT_GE(k_idle.warning_ms, 20'000);
  EXPECT_LE(k_idle_handing_over.quiet_ms + k_idle_handing_over.warning_ms, 60'000);
  EXPECT_EQ(seconds_left(90'000, k_idle), 30);
  EXPECT_EQ(seconds_left(119'001, k_idle), 1);
  EXPECT_DOUBLE_EQ(look_again_in_ms(60'000, k_idle), 30'000);
  EXPECT_DOUBLE_EQ(look_again_in_ms(90'250, k_idle), 750);
}

TEST(Kiosk, the_start_waits_for_ever_and_nothing_of_ones_own_is_offered) {
  open_kiosk();
  ASSERT_EQ(app().where, Where::kiosk);
  wait(100'000);
  EXPECT_EQ(app().where, Where::kiosk);
  EXPECT_EQ(null::reloads(), 0);
  take_check();
  ASSERT_EQ(app().where, Where::kiosk_result);
  press_id("show");
  ASSERT_EQ(app().where, Where::result);
  for (const char* id : {"check-again", "care"}) EXPECT_EQ(null::find_id(id), nullptr) << id;
  press_id("hand-over");
  for (const char* id : {"copy", "save"}) EXPECT_EQ(null::find_id(id), nullptr) << id;
  EXPECT_EQ(null::asked("keepResults"), "");
}

TEST(Kiosk, asks_after_ninety_seconds_and_begins_anew_after_thirty_more) {
  open_kiosk();
  touch();
  press_id("go");
  ASSERT_EQ(app().where, Where::choose);
  touch();
  wait(89);
  EXPECT_EQ(null::find_id("idle"), nullptr);
  wait(1);
  ASSERT_NE(null::find_id("idle"), nullptr);
  EXPECT_EQ(told("idle-tell"), "If not, we clear your answers. Seconds left: 30");
  wait(10);
  EXPECT_EQ(told("idle-tell"), "If not, we clear your answers. Seconds left: 20");
  EXPECT_EQ(null::reloads(), 0);
  wait(20);
  EXPECT_EQ(null::reloads(), 1);
  wait(1);
  EXPECT_EQ(null::reloads(), 1);  // once is enough
}

TEST(Kiosk, one_press_gives_more_time_more_than_ten_times) {
  open_kiosk();
  touch();
  press_id("go");
  for (int n = 0; n < 12; ++n) {
    touch();
    wait(91);
    ASSERT_NE(null::find_id("idle"), nullptr) << n;
    press_id("idle-stay");
    EXPECT_EQ(null::find_id("idle"), nullptr) << n;
  }
  EXPECT_EQ(null::reloads(), 0);
  wait(91);
  null::act({shell::MirrorAction::Kind::dismiss, "idle"});
  null::settle();
  EXPECT_EQ(null::find_id("idle"), nullptr);
  wait(91);
  press_id("idle-done");
  EXPECT_EQ(null::reloads(), 1);
}

TEST(Kiosk, a_code_to_scan_is_gone_after_a_minute) {
  open_kiosk();
  take_check();
  press_id("show");
  press_id("hand-over");
  touch();
  wait(31);
  EXPECT_NE(null::find_id("idle"), nullptr);
  wait(29);
  EXPECT_EQ(null::reloads(), 1);
}

TEST(Kiosk, counts_are_kept_and_nothing_else) {
  open_kiosk();
  take_check();
  EXPECT_EQ(null::asked("keep").find("counted\n1 20782 spray 1"), 0U) << null::asked("keep");
  EXPECT_FALSE(null::was_asked("keepResults"));
}

TEST(Kiosk, settings_of_one_person_are_not_the_next_ones) {
  open_kiosk("", "1 text=150 language=es");
  EXPECT_EQ(app().content.language(), "es");
  EXPECT_FLOAT_EQ(app().ui->text_scale(), 1.5F);
  kit::Look look = app().ui->look();
  look.text_scale = 2;
  app().ui->set_look(look);
  shell::redraw();
  null::settle();
  EXPECT_EQ(null::asked("keep"), "");
}

TEST(Kiosk, loudness_is_the_same_for_everybody_again) {
  open_kiosk();
  null::set_voice({.languages = "en"});
  null::settle();
  press_id("look-button");
  press_id("look/loudness/quiet");
  EXPECT_EQ(app().ui->look().loudness, kit::Look::Loudness::quiet);
  EXPECT_EQ(null::asked("keep"), "");
  open_kiosk();
  EXPECT_EQ(app().ui->look().loudness, kit::Look::Loudness::loud);
  open_kiosk("", "1 volume=medium");
  EXPECT_EQ(app().ui->look().loudness, kit::Look::Loudness::medium);
}

TEST(Kiosk, speech_of_its_own_is_asked_for_by_a_button_and_told_the_words_it_needs) {
  open_kiosk();
  null::set_reply("kioskSpeech", "");
  EXPECT_EQ(null::find_id("aloud"), nullptr) << "no voice";
  null::set_voice({.languages = "en es"});
  null::settle();
  EXPECT_EQ(null::asked("kioskSpeech"), "") << "not by itself";
  press_id("aloud");
  EXPECT_EQ(null::asked("kioskSpeech").find("\nButton\nSwitch\nChoice\nTick box\n"), 0U);
  EXPECT_NE(null::find_id("aloud-how"), nullptr);
  kit::Look look = app().ui->look();
  look.loudness = kit::Look::Loudness::quiet;
  look.read_slowly = true;
  app().ui->set_look(look);
  null::settle();
  EXPECT_EQ(null::asked("kioskSpeech").find("slowly quiet\nButton\n"), 0U);
  press_id("language-es");
  EXPECT_EQ(null::asked("kioskSpeech").find("slowly quiet\nBotón\n"), 0U);
  EXPECT_NE(null::asked("kioskSpeech").find("\n{place} de {count}"), std::string::npos);
  press_id("aloud");
  EXPECT_EQ(null::asked("kioskSpeech"), "");
}

TEST(Kiosk, speech_gives_twice_the_time) {
  open_kiosk();
  null::set_voice({.languages = "en"});
  null::settle();
  press_id("aloud");
  touch();
  press_id("go");
  touch();
  wait(179);
  EXPECT_EQ(null::find_id("idle"), nullptr);
  wait(1);
  EXPECT_NE(null::find_id("idle"), nullptr);
}

TEST(Kiosk, staff_see_counts_of_five_and_more_past_the_code_only) {
  open_kiosk("1 20782 spray 12 hold-breath 7 slow-deep 2; soft-mist 3");
  press_id("staff");
  EXPECT_EQ(app().where, Where::kiosk);  // refused
  null::set_reply("kioskStaff", "yes");
  null::set_reply("kioskHealth", "95\n31\n14\n2\n0");
  press_id("staff");
  null::settle();
  ASSERT_EQ(app().where, Where::kiosk_staff);
  EXPECT_EQ(told("checks-spray"), "Spray inhaler, checks done: 12");
  EXPECT_EQ(told("checks-soft-mist"), "Soft mist inhaler, checks done: Hidden: fewer than 5");
  const std::string all = rig::all_told();
  EXPECT_NE(all.find("\n7\n12\n"), std::string::npos) << all;
  EXPECT_EQ(all.find("\n2\n12\n"), std::string::npos) << all;
  EXPECT_NE(all.find("Visits: 14"), std::string::npos);
  EXPECT_NE(all.find("Times the picture came late: 2"), std::string::npos);
  EXPECT_NE(all.find("Times it stopped: 0"), std::string::npos);
  press_id("save");
  EXPECT_NE(null::asked("save").find("rehale-2026-11-25.csv\n"), std::string::npos);
  EXPECT_EQ(null::asked("save").find(",2,"), std::string::npos);
  press_id("set-up");
  EXPECT_EQ(null::asked("keep").find("kiosk\n1 "), 0U);
  press_id("forget");
  EXPECT_EQ(null::asked("keep"), "counted\n");
}

TEST(Kiosk, help_says_what_stays_on_a_shared_device) {
  open_kiosk();
  press_id("help");
  const std::string all = rig::all_told();
  EXPECT_NE(all.find("Only a count stays."), std::string::npos) << all;
  EXPECT_EQ(all.find("Your answers stay here."), std::string::npos) << all;
  EXPECT_EQ(null::find_id("desk"), nullptr);
}

TEST(Kiosk, broken_counts_begin_anew) {
  open_kiosk("1 20782 spray twelve");
  EXPECT_EQ(app().where, Where::kiosk);
  EXPECT_TRUE(app().kiosk.tally.families.empty());
}

TEST(Kiosk, while_it_is_cleaned_there_is_nothing_to_touch) {
  open_kiosk();
  null::set_reply("kioskStaff", "yes");
  press_id("staff");
  null::settle();
  press_id("clean");
  ASSERT_EQ(app().where, Where::kiosk_clean);
  for (const shell::MirrorNode& node : null::mirror().nodes)
    EXPECT_NE(node.role, shell::Role::button) << node.name;
  wait(59);
  EXPECT_EQ(null::reloads(), 0);
  EXPECT_EQ(told("left"), "Seconds left: 1");
  wait(1);
  EXPECT_EQ(null::reloads(), 1);
}

}  // namespace
}  // namespace rehale::screens
