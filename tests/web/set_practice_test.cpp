// Set a practice on the real screens with the null host: few presses to a link, and all that was
// picked is in it.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/assignment_code.h"
#include "tests/web/app_rig.h"
#include "web/screens/slips.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using exchange::Assignment;
using rig::app;
using rig::k_day;
using rig::press;
using rig::told;
using shell::Role;

exchange::PublicKey some_key() {
  exchange::PublicKey key;
  key.fill(7);
  key.front() = 4;
  return key;
}

Assignment made() {
  const std::string link = app().set_practice.link;
  const std::string start = "https://page.invalid/rehale/#a=";
  EXPECT_EQ(link.substr(0, start.size()), start);
  const auto set = exchange::read_assignment(std::string_view(link).substr(start.size()));
  EXPECT_TRUE(set);
  return set.value_or(Assignment{});
}

TEST(SetPractice, two_presses_make_a_link_for_one_family_in_two_weeks) {
  rig::open_app({shell::k_option_set, "1"});
  ASSERT_EQ(app().where, Where::set_practice);
  press(Role::checkbox, "Spray inhaler");
  press(Role::button, "Make the link");
  ASSERT_EQ(app().where, Where::set_link);
  const Assignment set = made();
  EXPECT_EQ(set.families, std::vector<catalog::Id>{"spray"});
  EXPECT_EQ(set.due, k_day + 14);
  EXPECT_EQ(set.expires, k_day + 14 + 28);
  EXPECT_EQ(set.questions, 0);
  EXPECT_EQ(set.language, "");
  EXPECT_TRUE(set.focus.empty());
  EXPECT_FALSE(set.key);
  EXPECT_LE(app().set_practice.link.size(), 400U);
  EXPECT_EQ(null::asked("qr"), app().set_practice.link);
}

TEST(SetPractice, everything_that_can_be_picked_is_in_the_link) {
  rig::open_app({shell::k_option_set, "1"});
  press(Role::checkbox, "Spray inhaler");
  press(Role::checkbox, "Soft mist inhaler");
  press(Role::radio, "In 4 weeks");
  press(Role::disclosure, "Number of questions and language");
  press(Role::radio, "10 questions");
  press(Role::radio, "Español");
  press(Role::disclosure, "Steps to look at");
  const auto& nodes = null::mirror().nodes;
  const auto step = std::ranges::find_if(nodes, [](const auto& node) {
    return node.role == Role::checkbox && node.id.find("step-") != std::string::npos;
  });
  ASSERT_NE(step, nodes.end()) << "no steps to pick";
  const std::string id = step->id.substr(step->id.find("step-") + 5);
  null::press(std::string(step->id));
  null::settle();
  press(Role::button, "Make the link");
  const Assignment set = made();
  EXPECT_EQ(set.families, (std::vector<catalog::Id>{"spray", "soft-mist"}));
  EXPECT_EQ(set.due, k_day + 28);
  EXPECT_EQ(set.questions, 10);
  EXPECT_EQ(set.language, "es");
  EXPECT_EQ(set.focus, std::vector<catalog::Id>{id});
}

TEST(SetPractice, without_a_family_there_is_no_link_and_no_day_means_no_end) {
  rig::open_app({shell::k_option_set, "1"});
  press(Role::button, "Make the link");
  EXPECT_EQ(app().where, Where::set_practice);
  EXPECT_EQ(null::take_announcements().back(), "Pick at least one inhaler first.");
  press(Role::checkbox, "Soft mist inhaler");
  press(Role::radio, "No set day");
  press(Role::button, "Make the link");
  EXPECT_FALSE(made().due);
  EXPECT_FALSE(made().expires);
}

TEST(SetPractice, a_key_made_or_read_goes_into_the_link) {
  for (const std::string service : {"makeKey", "useKey"}) {
    rig::open_app({shell::k_option_set, "1"});
    press(Role::checkbox, "Spray inhaler");
    press(Role::disclosure, "Seal the results");
    EXPECT_NE(told("key-lost").find("you lose the results"), std::string::npos);
    null::set_reply(service, exchange::to_base64url(some_key()));
    press(Role::button, service == "makeKey" ? "Make my key" : "Use my key file");
    press(Role::button, "Make the link");
    EXPECT_EQ(made().key, some_key()) << service;
    EXPECT_LE(app().set_practice.link.size(), 400U);
  }
}

TEST(SetPractice, a_key_that_does_not_come_is_told_and_not_used) {
  rig::open_app({shell::k_option_set, "1"});
  press(Role::disclosure, "Seal the results");
  press(Role::button, "Use my key file");  // nobody answers
  EXPECT_EQ(app().set_practice.told, "set/no-key");
  for (const char* reply : {"AAAA", "not a key", "BA"}) {
    null::set_reply("useKey", reply);
    press(Role::button, "Use my key file");
    EXPECT_FALSE(app().set_practice.key) << reply;
  }
  app().set_practice.told.clear();
  null::set_reply("useKey", "");  // called off
  press(Role::button, "Use my key file");
  EXPECT_EQ(app().set_practice.told, "");
}

TEST(SetPractice, slips_say_who_what_and_until_when_in_the_language_that_was_set) {
  rig::open_app({shell::k_option_set, "1"});
  press(Role::checkbox, "Spray inhaler");
  press(Role::disclosure, "Number of questions and language");
  press(Role::radio, "Português");
  press(Role::button, "Make the link");
  null::set_reply("slips", "");
  press(Role::button, "Print a sheet of 30 slips");
  const std::string sheet = null::asked("slips");
  EXPECT_EQ(sheet.find("count 30\nqr https://page.invalid/rehale/#a=A1"), 0U) << sheet;
  EXPECT_NE(sheet.find("9 de dezembro de 2026"), std::string::npos) << sheet;  // k_day + 14
  EXPECT_NE(sheet.find("\nname Nome:"), std::string::npos);
  press(Role::button, "Print one slip");
  const std::string slip = null::asked("slips");
  EXPECT_EQ(slip.find("count"), std::string::npos);
  EXPECT_NE(slip.find("\nstep 3. "), std::string::npos) << slip;
  EXPECT_EQ(slip.find('{'), std::string::npos) << "a place was not filled";
}

}  // namespace
}  // namespace rehale::screens
