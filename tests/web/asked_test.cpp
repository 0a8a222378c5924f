// Do a practice that was set, on the real screens with the null host: what the link sets is kept,
// who it is for is told, and only the sealed code goes out of a sealed one.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/envelope.h"
#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"
#include "tests/support/courses.h"
#include "tests/web/app_rig.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using exchange::Assignment;
using rig::app;
using rig::k_day;
using rig::press;
using rig::told;
using shell::Role;

Assignment some_set() {
  Assignment set;
  set.families = {"spray"};
  set.questions = 7;
  set.due = k_day + 14;
  set.expires = k_day + 42;
  for (std::size_t n = 0; n < set.id.size(); ++n) set.id[n] = static_cast<std::uint8_t>(n + 3);
  return set;
}

exchange::PublicKey some_key() {
  exchange::PublicKey key;
  key.fill(7);
  key.front() = 4;
  return key;
}

void open_set(const Assignment& set, Day today = k_day) {
  rig::open_app({shell::k_option_asked, *exchange::write_assignment(set)}, today);
}

// Takes the whole check as somebody who never slips.
void take_check() {
  press(Role::button, "Start");
  while (app().where == Where::question) {
    const auto& course = app().session.run().course();
    app().give(support::scripted_answer(course, app().session.open_question(), {}, {}));
  }
  shell::redraw();
  null::settle();
  ASSERT_EQ(app().where, Where::result);
}

void to_hand_over() { press(Role::button, "Show this to your pharmacist or nurse"); }

TEST(Asked, one_family_leads_straight_to_it_and_says_who_asks_and_until_when) {
  open_set(some_set());
  ASSERT_EQ(app().where, Where::ready);
  EXPECT_EQ(app().picked(), "spray");
  EXPECT_EQ(told("asked"), "Your care team asks you to do this check by 9 December 2026.");
  take_check();
  EXPECT_EQ(app().session.run().given().size(), 7U);
}

TEST(Asked, of_several_families_only_those_can_be_picked) {
  Assignment set = some_set();
  set.families = {"powder-lever", "soft-mist"};
  open_set(set);
  ASSERT_EQ(app().where, Where::asked);
  EXPECT_EQ(null::find(Role::button, "Spray inhaler"), nullptr);
  press(Role::button, "Soft mist inhaler");
  ASSERT_EQ(app().where, Where::ready);
  press(Role::button, "Back");
  ASSERT_EQ(app().where, Where::asked) << "what was set is still set";
  press(Role::button, "Do a check of my own");
  EXPECT_EQ(app().where, Where::choose);
  EXPECT_FALSE(app().assigned);
}

TEST(Asked, the_language_is_the_one_that_was_set) {
  Assignment set = some_set();
  set.language = "pt";
  open_set(set);
  EXPECT_EQ(app().content.language(), "pt");
  EXPECT_NE(told("asked").find("9 de dezembro de 2026"), std::string::npos) << told("asked");
}

TEST(Asked, steps_in_focus_are_asked_about_and_stand_in_the_run) {
  const auto course = rig::page_course("spray");
  const auto& family = course->family;
  for (const auto& technique : family.techniques) {
    if (technique.critical) continue;
    Assignment set = some_set();
    set.focus = {technique.shared.empty() ? technique.id : technique.shared};
    open_set(set);
    take_check();
    const auto& run = app().session.run();
    EXPECT_EQ(run.log().front().focus, std::vector<catalog::Id>{technique.id});
    EXPECT_TRUE(std::ranges::any_of(run.given(), [&](const check::Given& given) {
      const auto& needs = family.questions[static_cast<std::size_t>(given.question)].techniques;
      return std::ranges::find(needs, technique.id) != needs.end();
    })) << technique.id;
  }
}

TEST(Asked, after_the_day_it_is_said_kindly_and_taken_after_the_end_it_is_not) {
  open_set(some_set(), k_day + 14);
  EXPECT_NE(told("asked").find(" by 9 December"), std::string::npos) << "the day itself counts";
  open_set(some_set(), k_day + 15);
  ASSERT_EQ(app().where, Where::ready);
  EXPECT_NE(told("asked").find("That day has passed. You can still do it."), std::string::npos);
  open_set(some_set(), k_day + 42);
  EXPECT_EQ(app().where, Where::ready);
  open_set(some_set(), k_day + 43);
  ASSERT_EQ(app().where, Where::trouble);
  EXPECT_EQ(told("title"), "This link has ended");
  EXPECT_NE(told("lead").find("until 6 January 2027"), std::string::npos) << told("lead");
  EXPECT_FALSE(app().assigned);
  press(Role::button, "Go on");
  EXPECT_EQ(app().where, Where::choose);
}

TEST(Asked, links_that_cannot_be_taken_get_a_clear_message_and_a_way_out) {
  const std::string good = *exchange::write_assignment(some_set());
  std::string newer = good;
  newer[1] = '9';
  Assignment other = some_set(), step = some_set();
  other.families = {"spray", "no-such-kind"};
  step.focus = {"no-such-habit"};
  const std::pair<std::string, std::string> cases[] = {
      {"x", "trouble/link"},
      {good.substr(0, good.size() - 1), "trouble/link"},
      {good + "A", "trouble/link"},
      {std::string(5000, 'A'), "trouble/link"},
      {newer, "trouble/link-newer"},
      {*exchange::write_assignment(other), "asked/other"},
      {*exchange::write_assignment(step), "asked/other"}};
  for (const auto& [code, title] : cases) {
    rig::open_app({shell::k_option_asked, code});
    ASSERT_EQ(app().where, Where::trouble) << code.substr(0, 40);
    EXPECT_EQ(app().trouble.title, title) << code.substr(0, 40);
    press(Role::button, "Go on");
    EXPECT_EQ(app().where, Where::choose);
    EXPECT_EQ(null::error_title(), "");
  }
}

TEST(Asked, a_sealed_link_says_who_can_open_it) {
  const std::string whole = *exchange::write_sealed(
      {.content = "0123456789abcdef", .sender = some_key(), .sealed = exchange::Bytes(60, 9)});
  std::string newer = whole;
  newer[1] = '2';
  for (const auto& [code, title] : {std::pair(whole, "This result is sealed"),
                                    std::pair(whole.substr(0, 90), "This link is not whole"),
                                    std::pair(newer, "This link is newer than this page")}) {
    rig::open_app({shell::k_option_sealed, code});
    ASSERT_EQ(app().where, Where::trouble) << title;
    EXPECT_EQ(told("title"), title);
  }
}

TEST(Asked, the_result_carries_the_assignment_and_the_person_is_told_who_it_is_for) {
  open_set(some_set());
  take_check();
  to_hand_over();
  EXPECT_EQ(told("for"), "This is for the one who sent you the link.");
  const auto result = exchange::read_result(app().hand_over.code);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->head.assignment, some_set().id);
  const auto log = exchange::log_of(*result, app().session.family(), app().session.content());
  ASSERT_TRUE(log) << log.error().detail;
  EXPECT_EQ(exchange::write_log(*log).find("\"questions\":7") != std::string::npos, true);
  EXPECT_TRUE(check::Run::replay(app().session.run().course(), *log)->finished());
}

TEST(Asked, handed_on_such_a_result_opens_as_any_other) {
  open_set(some_set());
  take_check();
  to_hand_over();
  const std::string code = app().hand_over.code;
  rig::open_app({shell::k_option_code, code});
  ASSERT_EQ(app().where, Where::result);
  EXPECT_FALSE(told("handed").empty());
}

// ---- sealed

std::string seal_reply(const exchange::Bytes& sealed) {
  return exchange::to_base64url(some_key()) + '\n' + exchange::to_base64url(sealed);
}

TEST(Sealed, only_the_sealed_code_goes_out) {
  Assignment set = some_set();
  set.key = some_key();
  open_set(set);
  EXPECT_NE(told("asked-sealed").find("Only the one who asked can open it"), std::string::npos);
  take_check();
  null::set_reply("seal", seal_reply(exchange::Bytes(200, 9)));
  to_hand_over();
  EXPECT_EQ(told("for"), "This is for the one who sent you the link. Only they can open it.");
  const auto code = exchange::read_sealed(app().hand_over.code);
  ASSERT_TRUE(code) << app().hand_over.code;
  EXPECT_EQ(code->assignment, set.id);
  EXPECT_EQ(code->content, app().session.content());
  EXPECT_EQ(code->sealed, exchange::Bytes(200, 9));
  EXPECT_EQ(null::asked("qr"), "https://page.invalid/rehale/#s=" + app().hand_over.code);
  // what was sealed: key, bound bytes, the result without the assignment
  const std::string words = null::asked("seal");
  const std::string bound = exchange::to_base64url(exchange::bound_bytes(set.id, code->content));
  EXPECT_NE(words.find('\n' + bound + '\n'), std::string::npos);
  const auto plain = exchange::from_base64url(words.substr(words.rfind('\n') + 1));
  const auto opened = exchange::read_opened(*code, *plain);
  ASSERT_TRUE(opened) << opened.error().detail;
  EXPECT_EQ(opened->head.assignment, set.id);
  null::set_reply("save", "");
  null::set_reply("copy", "");
  press(Role::button, "Save as a file");
  press(Role::button, "Copy the link");
  const std::string inside = app().hand_over.plain.substr(2, 40);
  for (const char* service : {"save", "copy", "qr"})
    EXPECT_EQ(null::asked(service).find(inside), std::string::npos) << service;
  const std::string saved = null::asked("save");
  EXPECT_EQ(saved.find("events"), std::string::npos);
  const auto found = exchange::find_codes(saved);
  ASSERT_EQ(found.size(), 1U) << saved;
  EXPECT_EQ(found.front().code, app().hand_over.code) << "a desk finds it in the file";
  for (const auto& node : null::mirror().nodes)
    EXPECT_EQ(node.name.find(inside), std::string::npos) << node.id;
}

TEST(Sealed, the_same_run_keeps_its_seal) {
  Assignment set = some_set();
  set.key = some_key();
  open_set(set);
  take_check();
  null::set_reply("seal", seal_reply(exchange::Bytes(200, 9)));
  to_hand_over();
  const std::string first = app().hand_over.code;
  press(Role::button, "Back to your result");
  null::set_reply("seal", seal_reply(exchange::Bytes(200, 8)));
  to_hand_over();
  EXPECT_EQ(app().hand_over.code, first);
}

TEST(Sealed, where_it_cannot_be_sealed_nothing_goes_out) {
  for (const std::string& reply : {std::string(), std::string("AAAA"), std::string("AAAA\nAAAA")}) {
    Assignment set = some_set();
    set.key = some_key();
    open_set(set);
    take_check();
    if (!reply.empty()) null::set_reply("seal", reply);
    to_hand_over();
    EXPECT_EQ(told("sealing").find("This browser could not seal your result."), 0U);
    EXPECT_EQ(app().hand_over.code, "");
    EXPECT_EQ(null::asked("qr"), "");
    for (const char* way :
         {"Copy the link", "Save as a file", "Code to read out", "Print one page"})
      EXPECT_EQ(null::find(Role::button, way), nullptr) << way;
    press(Role::button, "Back to your result");
    EXPECT_EQ(app().where, Where::result);
  }
}

}  // namespace
}  // namespace rehale::screens
