// The hand-over on the real screens with the null host: what goes out comes back; broken links are
// told.
#include <gtest/gtest.h>

#include "core/exchange/run_json.h"
#include "tests/support/courses.h"
#include "tests/web/app_rig.h"
#include "web/screens/hand_over.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using shell::Role;

using rig::k_day;
using rig::page_course;
using rig::press;

void open_page(const std::string& code = {}) { rig::open_app({shell::k_option_code, code}); }

std::string code_of(const std::string& family, bool finished = true) {
  const auto course = page_course(family);
  support::Script script{.seed = 7};
  for (const auto& technique : course->family.techniques) {  // those are always probed
    if (technique.critical && script.lacks.size() < 4) script.lacks.push_back(technique.id);
  }
  auto log = support::scripted_run(*course, script).log();
  if (!finished) log.resize(5);
  return *exchange::write_result({.page = "0123456789ab", .day = k_day}, log, course->family);
}

TEST(HandOver, a_link_shows_the_result_and_says_that_it_was_handed_over) {
  for (const auto& family : support::shipped_families()) {
    open_page(code_of(family));
    ASSERT_EQ(rig::app().where, Where::result) << family;
    const auto* told = null::find_id("handed");
    ASSERT_NE(told, nullptr);
    EXPECT_NE(told->name.find("25 November 2026"), std::string::npos) << told->name;
    EXPECT_NE(null::find(Role::button, "Start a new check"), nullptr);
  }
}

TEST(HandOver, what_is_handed_on_is_what_came) {
  const std::string code = code_of("spray");
  open_page(code);
  press(Role::button, "Show this to your pharmacist or nurse");
  ASSERT_EQ(rig::app().where, Where::hand_over);
  EXPECT_EQ(rig::app().hand_over.code, code);
  EXPECT_EQ(null::asked("qr"), "https://page.invalid/rehale/#r=" + code);
  EXPECT_NE(null::find_id("qr"), nullptr);
}

TEST(HandOver, copying_is_announced_and_a_refusal_is_told) {
  open_page(code_of("spray"));
  press(Role::button, "Show this to your pharmacist or nurse");
  null::set_reply("copy", "");
  press(Role::button, "Copy the link");
  EXPECT_EQ(null::asked("copy"), rig::app().hand_over.link);
  EXPECT_EQ(null::take_announcements().back(), "Copied");
  press(Role::button, "Save as a file");  // nobody answers
  EXPECT_EQ(rig::app().hand_over.told, "hand/not-done");
  const std::string saved = null::asked("save");
  ASSERT_EQ(saved.find("rehale-result.json\n"), 0U);
  EXPECT_TRUE(exchange::read_log(saved.substr(saved.find('\n') + 1)));
}

TEST(HandOver, without_the_picture_the_other_ways_stay) {
  open_page(code_of("spray"));
  null::set_reply("qr", "");
  press(Role::button, "Show this to your pharmacist or nurse");
  EXPECT_EQ(null::find_id("qr"), nullptr);
  EXPECT_NE(null::find(Role::button, "Copy the link"), nullptr);
}

TEST(HandOver, a_code_is_read_out_in_groups_of_four) {
  EXPECT_EQ(in_groups("R1abcdefg"), "R1ab cdef g");
  EXPECT_EQ(in_groups("R1ab"), "R1ab");
  EXPECT_EQ(in_groups(""), "");
}

TEST(HandOver, a_sheet_names_what_to_work_on_with_the_how_and_fits_its_kinds) {
  open_page(code_of("spray"));
  press(Role::button, "Show this to your pharmacist or nurse");
  null::set_reply("print", "");
  press(Role::button, "Print one page");
  const std::string sheet = null::asked("print");
  EXPECT_NE(sheet.find("\nitem 1. "), std::string::npos) << sheet;
  EXPECT_NE(sheet.find("\nhow "), std::string::npos);
  EXPECT_EQ(sheet.find("\nitem 4. "), std::string::npos);
  EXPECT_NE(sheet.find("Self-reported, not observed"), std::string::npos);
  EXPECT_EQ(sheet.find('{'), std::string::npos) << "a place was not filled";
}

// Every letter lost or changed is told (the check value), other content is never guessed at.
TEST(HandOver, broken_links_get_a_clear_message_and_a_way_out) {
  const std::string good = code_of("spray");
  std::string newer = good, turned = good;
  newer[1] = '9';
  turned[good.size() / 2] = turned[good.size() / 2] == 'A' ? 'B' : 'A';
  const auto other =
      check::make_course(support::shipped_course("spray")->family, "fedcba9876543210");
  const auto other_code =
      exchange::write_result({}, support::scripted_run(*other, {.seed = 3}).log(), other->family);
  const std::pair<std::string, std::string> cases[] = {
      {"x", "trouble/link"},
      {good.substr(0, good.size() - 1), "trouble/link"},
      {good + "A", "trouble/link"},
      {turned, "trouble/link"},
      {newer, "trouble/link-newer"},
      {"A" + good.substr(1), "trouble/link"},
      {std::string(5000, 'R'), "trouble/link"},
      {code_of("spray", false), "trouble/link"},
      {*other_code, "trouble/link-other"}};
  for (const auto& [code, title] : cases) {
    open_page(code);
    ASSERT_EQ(rig::app().where, Where::trouble) << code.substr(0, 40);
    EXPECT_EQ(rig::app().trouble.title, title) << code.substr(0, 40);
    press(Role::button, "Go on");
    EXPECT_EQ(rig::app().where, Where::choose);
    EXPECT_EQ(null::error_title(), "");
  }
}

}  // namespace
}  // namespace rehale::screens
