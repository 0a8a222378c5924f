// When to check again and results over time on the real screens with the null host: the day and
// its reason, the calendar, what is kept only after a yes, what changed, and storage that does not
// answer, is full or holds rubbish.
#include <gtest/gtest.h>

#include "core/catalog/content_id.h"
#include "core/exchange/kept.h"
#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/web/page_rig.h"
#include "web/shell/host_null.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using rig::all_told;
using rig::app;
using rig::k_day;
using rig::open_page;
using rig::press_id;
using rig::told;

std::string asset(const std::string& path) {
  return support::read_text(REHALE_SOURCE_DIR "/assets/families/spray/" + path);
}

// Spray under the content id that the page works out.
const check::Course& page_course() {
  static const auto course = [] {
    const catalog::ContentFile procedure{"", asset("procedure.json")};
    const catalog::ContentFile questions{"", asset("questions.json")};
    return *check::make_course(support::shipped_course("spray")->family,
                               catalog::content_id(procedure, questions));
  }();
  return course;
}

exchange::KeptResult result_of(Day day, const std::vector<std::string>& lacks,
                               std::uint64_t seed = 7) {
  const auto log = support::scripted_run(page_course(), {.lacks = lacks, .seed = seed}).log();
  std::string code = *exchange::write_result({.day = day}, log, page_course().family);
  auto read = *exchange::read_result(code);
  return {std::move(code), std::move(read)};
}

// A whole check on the page, as somebody who lacks these techniques.
void take_check(const std::vector<std::string>& lacks) {
  press_id("go");
  while (app().where == Where::question) {
    app().give(support::scripted_answer(page_course(), app().session.open_question(), lacks, {}));
    null::settle();
  }
  shell::redraw();
  null::settle();
  ASSERT_EQ(app().where, Where::result);
}

std::vector<std::string> critical() {
  std::vector<std::string> ids;
  for (const auto& technique : page_course().family.techniques) {
    if (technique.critical) ids.push_back(technique.id);
  }
  return ids;
}

std::string kept_text(std::vector<exchange::KeptResult> results) {
  return exchange::write_kept({.results = std::move(results)});
}

TEST(AgainScreen, a_step_that_is_lacking_brings_the_day_to_a_week_and_says_which) {
  open_page({.family = "spray"});
  take_check({critical().front()});
  press_id("check-again");
  ASSERT_EQ(app().where, Where::again);
  EXPECT_EQ(told("when-title"), "Check again on 2 December 2026");  // 7 days (diagnosis.md 3.4)
  EXPECT_EQ(told("why").find("This step matters a lot and is not sure yet: "), 0U) << told("why");
  press_id("close");
  EXPECT_EQ(app().where, Where::result);
}

TEST(AgainScreen, with_all_in_hand_it_is_four_weeks_at_most) {
  open_page({.family = "spray"});
  take_check({});
  press_id("check-again");
  EXPECT_LE(app().again.next.on, k_day + 28);
  EXPECT_GT(app().again.next.on, k_day + 7);
}

TEST(AgainScreen, the_day_goes_to_the_calendar_with_its_type) {
  open_page({.family = "spray"});
  take_check({critical().front()});
  press_id("check-again");
  press_id("calendar");
  EXPECT_EQ(told("message"), "Your browser did not do that.");  // nobody answers
  null::set_reply("save", "");
  press_id("calendar");
  const std::string saved = null::asked("save");
  EXPECT_EQ(saved.find("rehale.ics\nBEGIN:VCALENDAR\r\n"), 0U);
  EXPECT_NE(saved.find("DTSTART;VALUE=DATE:20261202"), std::string::npos) << saved;
  EXPECT_EQ(told("message"), "Saved. Open that file to add the days.");
}

TEST(AgainScreen, a_result_from_a_link_counts_from_its_own_day) {
  open_page({.result = result_of(k_day - 40, {critical().front()}).code, .family = "spray"});
  ASSERT_EQ(app().where, Where::result);
  press_id("check-again");
  EXPECT_EQ(told("when-title"), "Check again now");
  EXPECT_EQ(null::find_id("keep"), nullptr);  // not this person's to keep
}

TEST(HistoryScreen, nothing_is_kept_before_a_yes_and_all_of_it_goes_in_one_tap) {
  open_page({.family = "spray"});
  null::set_reply("keepResults", "");
  null::set_reply("forget", "");
  take_check({});
  EXPECT_EQ(null::asked("keepResults"), "");
  press_id("check-again");
  EXPECT_EQ(null::asked("keepResults"), "");
  press_id("keep");
  const auto kept = exchange::read_kept(null::asked("keepResults"));
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->results.size(), 1U);
  EXPECT_EQ(told("history-message"), "Kept on this device.");
  EXPECT_EQ(told("first"), "This is the first one. Next time you will see what changed.");
  press_id("delete");
  EXPECT_EQ(told("history-message"), "All of it is gone.");
  EXPECT_NE(null::find_id("keep"), nullptr);  // asked anew
}

TEST(HistoryScreen, what_changed_since_last_time_is_named) {
  const auto lacked = critical();
  const std::vector<std::string> two{lacked[0], lacked[1]};
  open_page({.family = "spray", .kept = kept_text({result_of(k_day - 30, two)})});
  null::set_reply("keepResults", "");
  take_check({});
  press_id("check-again");
  EXPECT_EQ(told("since"), "Since 26 October 2026");
  EXPECT_EQ(told("overall"), "More steps go well now than then.");
  for (const auto& id : two) {
    EXPECT_NE(all_told().find("You have this now: " + app().tell("techniques/" + id + "/name")),
              std::string::npos)
        << id;
  }
  EXPECT_EQ(exchange::read_kept(null::asked("keepResults"))->results.size(), 2U);
}

TEST(HistoryScreen, one_step_is_within_chance_and_other_questions_are_not_compared) {
  auto other = result_of(k_day - 60, {});
  const auto course =
      *check::make_course(support::shipped_course("spray")->family, "fedcba9876543210");
  const auto log = support::scripted_run(course, {.seed = 2}).log();
  other.code = *exchange::write_result({.day = k_day - 60}, log, course.family);
  open_page(
      {.family = "spray", .kept = kept_text({other, result_of(k_day - 30, {critical().front()})})});
  take_check({});
  press_id("check-again");
  EXPECT_EQ(told("overall"), "All in all, about the same. Small changes may be chance.");
  EXPECT_EQ(told("other"), "An older result had other questions. It cannot be compared.");
}

TEST(HistoryScreen, storage_that_is_shut_full_or_broken_is_told_and_does_no_harm) {
  open_page({.family = "spray", .no_storage = true});
  take_check({});
  press_id("check-again");
  EXPECT_EQ(told("closed"), "This browser does not let us look at what is kept.");
  EXPECT_EQ(null::find_id("keep"), nullptr);

  open_page({.family = "spray"});  // "keepResults" is refused: full
  take_check({});
  press_id("check-again");
  press_id("keep");
  EXPECT_EQ(told("history-message"),
            "This browser did not keep it. Its storage may be full or shut.");

  open_page({.family = "spray", .kept = "?"});
  take_check({});
  press_id("check-again");
  EXPECT_EQ(told("rubbish"), "What is kept here cannot be read. You can delete it and begin anew.");
  null::set_reply("forget", "");
  press_id("delete");
  EXPECT_NE(null::find_id("keep"), nullptr);

  std::string broken = kept_text({result_of(k_day - 30, {})});
  broken[40] = broken[40] == 'A' ? 'B' : 'A';
  open_page({.family = "spray", .kept = broken});
  take_check({});
  press_id("check-again");
  EXPECT_EQ(told("unreadable"), "1 could not be read and was left out.");
  EXPECT_EQ(null::error_title(), "");
}

TEST(HistoryScreen, the_numbers_of_an_inhaler_are_kept_with_it_and_stand_in_the_saved_file) {
  const exchange::CareState told{.family = "spray", .counted = k_day, .left = 33};
  open_page({.family = "spray", .kept = exchange::write_kept({.care = {told}})});
  press_id("care");
  ASSERT_EQ(app().where, Where::care_plan);
  EXPECT_EQ(app().care.told, told);
  press_id("change");
  null::set_reply("keepResults", "");
  rig::type("left", 32);
  press_id("show");
  EXPECT_EQ(exchange::read_kept(null::asked("keepResults"))->care.front().left, 32);
  press_id("done");
  take_check({});
  EXPECT_NE(app().export_run().find("\"care\":\"C1"), std::string::npos);
}

}  // namespace
}  // namespace rehale::screens
