// A run survives as a code; codes are small; broken ones are told apart with their place.
#include "core/exchange/result_code.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/envelope.h"
#include "tests/support/courses.h"

namespace rehale::exchange {
namespace {

using check::Event;
using check::What;

const RandomId k_id{0xff, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 0xfe};

ResultHead full_head() {
  ResultHead head{.page = "0.3.0", .day = 20782, .helped = true, .again = true};
  head.confidence = 4;
  head.assignment = k_id;
  head.person = 4294967295U;
  return head;
}

check::Log run_of(const check::Course& course, std::uint64_t seed) {
  const auto& techniques = course.family.techniques;
  support::Script script{.lacks = {techniques[seed % techniques.size()].id}, .seed = seed};
  for (std::size_t n = 0; n < 12; ++n) script.recent.push_back(course.family.questions[n * 3].id);
  return support::scripted_run(course, script).log();
}

// The page names content by 16 hex digits.
check::Course hex_course(const std::string& family) {
  return *check::make_course(support::shipped_course(family)->family, "0123456789abcdef");
}

TEST(ResultCode, a_run_of_every_family_comes_back_and_replays_to_the_same_verdict) {
  for (const auto& family : support::shipped_families()) {
    const auto course = hex_course(family);
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
      const auto log = run_of(course, seed << 60U | seed);
      const auto code = write_result(full_head(), log, course.family);
      ASSERT_TRUE(code) << code.error().where << code.error().detail;
      const auto read = read_result(*code);
      ASSERT_TRUE(read) << read.error().where << read.error().detail;
      EXPECT_EQ(read->head, full_head());
      const auto back = log_of(*read, course.family, course.content);
      ASSERT_TRUE(back) << back.error().where << back.error().detail;
      EXPECT_EQ(*back, log);  // scripted times are whole tenths, ticks in the options' order
      const auto run = check::Run::replay(course, *back);
      ASSERT_TRUE(run);
      EXPECT_TRUE(std::ranges::equal(run->posterior().states(),
                                     check::Run::replay(course, log)->posterior().states()));
    }
  }
}

// The acceptance text: a link of at most 400 characters; a QR code of version 15 at level M holds
// 412 bytes (ISO/IEC 18004). 60 characters are left for the address of the page.
TEST(ResultCode, a_whole_run_with_everything_on_is_short_enough_for_a_link) {
  std::size_t longest = 0;
  for (const auto& family : support::shipped_families()) {
    const auto course = hex_course(family);
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
      auto log = run_of(course, ~seed);
      for (std::size_t n = 1; n < log.size(); ++n) log[n].at_ms = 31000.0 * static_cast<double>(n);
      longest = std::max(longest, write_result(full_head(), log, course.family)->size());
    }
  }
  RecordProperty("longest", static_cast<int>(longest));
  EXPECT_LE(longest + 60, 400U);
}

check::Log every_kind(const check::Course& course) {
  Event begin{.what = What::begin};
  begin.family = course.family.id;
  begin.content = course.content;
  begin.language = "en";
  check::Log log{begin};
  double at_ms = 0;
  for (const auto& question : course.family.questions) {
    log.push_back({.what = What::shown, .at_ms = at_ms += 1300, .question = question.id});
    log.push_back({.what = What::answered, .at_ms = at_ms += 700, .question = question.id});
    log.back().answer = check::right_answer(course.family, question);
    if (question.kind == catalog::Kind::order) std::ranges::reverse(log.back().answer.picked);
  }
  const auto& one = course.family.questions.front().id;
  log.push_back({.what = What::retry_shown, .at_ms = at_ms += 100, .question = one});
  log.push_back({.what = What::retry_shown, .at_ms = at_ms += 100, .question = one});
  log.push_back({.what = What::retry_answered, .at_ms = at_ms += 100, .question = one});
  log.back().answer.unsure = true;
  log.push_back({.what = What::retry_shown, .at_ms = at_ms += 100, .question = one});
  return log;
}

TEST(ResultCode, answers_of_every_question_and_practice_left_open_come_back) {
  for (const auto& family : support::shipped_families()) {
    const auto& course = *support::shipped_course(family);
    const auto log = every_kind(course);
    const auto code = write_result({}, log, course.family);
    ASSERT_TRUE(code) << code.error().where << code.error().detail;
    const auto back = log_of(*read_result(*code), course.family, course.content);
    ASSERT_TRUE(back) << back.error().where << back.error().detail;
    EXPECT_EQ(*back, log);
  }
}

TEST(ResultCode, an_amount_between_steps_comes_back_as_it_was) {
  const auto& course = *support::shipped_course("spray");
  const auto timing =
      std::ranges::find(course.family.questions, catalog::Kind::timing, &catalog::Question::kind);
  for (const double amount : {0.1, 3.7000000000000006, -1.0, 9.25, 1e300}) {
    auto log = every_kind(course);
    log.resize(3);
    log[1].question = log[2].question = timing->id;
    log[2].answer = {.amount = amount};
    const auto code = write_result({}, log, course.family);
    ASSERT_TRUE(code);
    EXPECT_EQ(log_of(*read_result(*code), course.family, course.content)->back().answer.amount,
              amount);
  }
}

TEST(ResultCode, other_content_is_told_not_guessed) {
  const auto& course = *support::shipped_course("spray");
  const auto code = *write_result({}, run_of(course, 3), course.family);
  const auto other = log_of(*read_result(code), course.family, "other");
  ASSERT_FALSE(other);
  EXPECT_EQ(other.error().code, "content-other");
  const auto& lever = *support::shipped_course("powder-lever");
  EXPECT_EQ(log_of(*read_result(code), lever.family, course.content).error().code, "content-other");
}

TEST(ResultCode, every_changed_or_lost_letter_is_seen) {
  const auto& course = *support::shipped_course("soft-mist");
  const std::string code = *write_result(full_head(), run_of(course, 3), course.family);
  for (std::size_t n = 0; n < code.size(); ++n) {
    EXPECT_FALSE(read_result(code.substr(0, n))) << "cut at " << n;
    std::string changed = code;
    changed[n] = changed[n] == 'x' ? 'y' : 'x';
    EXPECT_FALSE(read_result(changed)) << "changed at " << n;
    if (n + 1 < code.size() && code[n] != code[n + 1]) {
      changed = code;
      std::swap(changed[n], changed[n + 1]);
      EXPECT_FALSE(read_result(changed)) << "swapped at " << n;
    }
  }
}

TEST(ResultCode, each_kind_of_trouble_has_its_name) {
  EXPECT_EQ(read_result("").error().code, "code-kind");
  EXPECT_EQ(read_result("A1AAAAAAAAAAAA").error().code, "code-kind");
  EXPECT_EQ(read_result("R3AAAAAAAAAAAA").error().code, "code-newer");
  EXPECT_EQ(read_result("R1AAAA").error().code, "code-length");
  EXPECT_EQ(read_result("R1AAAAAAAAAAAA").error().code, "code-check");
  EXPECT_EQ(read_result("R1AAAA AAAAAAAA").error().code, "code-letter");
  EXPECT_EQ(read_result("R1" + std::string(k_max_code_letters, 'A')).error().code, "code-too-long");
}

TEST(ResultCode, a_payload_of_another_shape_names_the_field) {
  const std::uint8_t empty_list[] = {0x80};
  EXPECT_EQ(unpack_result(1, empty_list).error().code, "code-shape");
  // eleven fields, the first a number
  const std::uint8_t numbers[] = {0x8b, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
  EXPECT_EQ(unpack_result(1, numbers).error().where, "family (field 1)");
}

TEST(ResultCode, a_log_that_does_not_fit_the_family_is_not_packed) {
  const auto& course = *support::shipped_course("spray");
  const auto& lever = *support::shipped_course("powder-lever");
  const auto log = run_of(course, 3);
  EXPECT_EQ(write_result({}, log, lever.family).error().code, "log-empty");
  auto renamed = log;
  renamed[3].question = "no-such-question";
  EXPECT_EQ(write_result({}, renamed, course.family).error().code, "unknown-question");
  auto backwards = log;
  backwards[3].at_ms = 0;
  EXPECT_EQ(write_result({}, backwards, course.family).error().code, "log-shape");
  auto misfit = log;
  misfit[2].answer.picked = {"no-such-option"};
  EXPECT_EQ(write_result({}, misfit, course.family).error().code, "answer-shape");
}

TEST(ResultCode, the_key_tells_runs_apart_and_joins_a_run_with_its_later_practice) {
  const auto& course = *support::shipped_course("spray");
  const auto key = [&](const ResultHead& head, const check::Log& log) {
    return run_key(*read_result(*write_result(head, log, course.family)));
  };
  auto log = run_of(course, 3);
  const auto first = key({}, log);
  EXPECT_NE(first, key({}, run_of(course, 4)));
  EXPECT_NE(first, key({.day = 1}, log));
  const auto& id = course.family.questions.front().id;
  log.push_back({.what = What::retry_shown, .at_ms = log.back().at_ms + 100, .question = id});
  EXPECT_EQ(first, key({.helped = true}, log));
}

}  // namespace
}  // namespace rehale::exchange
