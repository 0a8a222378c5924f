// Reading a log through gives what replaying it gives, to the bit, and refuses what cannot be.
#include "core/check/read_through.h"

#include <gtest/gtest.h>

#include "tests/support/courses.h"
#include "tests/support/demo_group.h"

namespace rehale::check {
namespace {

void expect_same(const ReadThrough& read, const Run& run) {
  const auto verdict = run.verdict();
  ASSERT_EQ(read.given.size(), run.given().size());
  for (std::size_t n = 0; n < read.given.size(); ++n) {
    EXPECT_EQ(read.given[n].question, run.given()[n].question);
    EXPECT_EQ(read.given[n].marking.right, run.given()[n].marking.right);
  }
  for (std::size_t k = 0; k < verdict.techniques.size(); ++k) {
    EXPECT_EQ(read.verdict.techniques[k].probability, verdict.techniques[k].probability);
    EXPECT_EQ(read.verdict.techniques[k].label, verdict.techniques[k].label);
    EXPECT_EQ(read.verdict.techniques[k].probed, verdict.techniques[k].probed);
  }
  for (std::size_t b = 0; b < verdict.misconceptions.size(); ++b) {
    EXPECT_EQ(read.verdict.misconceptions[b].probability, verdict.misconceptions[b].probability);
    EXPECT_EQ(read.verdict.misconceptions[b].held, verdict.misconceptions[b].held);
  }
}

Log log_of(const Course& course, std::uint64_t seed) {
  const auto& techniques = course.family.techniques;
  return support::scripted_run(course,
                               {.lacks = {techniques[seed % techniques.size()].id}, .seed = seed})
      .log();
}

TEST(ReadThrough, gives_the_verdict_of_a_replay_to_the_bit) {
  for (const auto& family : support::shipped_families()) {
    const auto& course = *support::shipped_course(family);
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
      auto log = log_of(course, seed);
      const auto& id = course.family.questions.front().id;
      const double end = log.back().at_ms;
      log.push_back({.what = What::retry_shown, .at_ms = end + 1, .question = id});
      log.push_back({.what = What::retry_answered, .at_ms = end + 2, .question = id});
      log.back().answer = right_answer(course.family, course.family.questions.front());
      const auto run = Run::replay(course, log);
      const auto read = read_through(course, log);
      ASSERT_TRUE(run && read);
      expect_same(*read, *run);
    }
  }
}

// Answers as people give them: with slips, guesses and "I'm not sure".
TEST(ReadThrough, gives_the_verdicts_of_an_invented_group_to_the_bit) {
  std::vector<const Course*> courses;
  for (const auto& family : support::shipped_families())
    courses.push_back(support::shipped_course(family));
  std::size_t checks = 0;
  support::demo_group({.people = 60}, courses, [&checks](const auto& course, const auto& result) {
    const auto run = Run::replay(course, result.log);
    const auto read = read_through(course, result.log);
    ASSERT_TRUE(run && read);
    expect_same(*read, *run);
    ++checks;
  });
  EXPECT_GT(checks, 70U);
}

TEST(ReadThrough, what_cannot_be_is_named_with_its_event) {
  const auto& course = *support::shipped_course("spray");
  const Log log = log_of(course, 2);
  const auto code = [&course](const Log& changed) {
    const auto read = read_through(course, changed);
    return read ? "read" : read.error().code + " " + read.error().where.substr(0, 7);
  };
  EXPECT_EQ(code(log), "read");
  EXPECT_EQ(code({}), "log-empty event 0");
  auto other = log;
  other[0].content = "other";
  EXPECT_EQ(code(other), "begin-mismatch event 0");
  other = log;
  other[2].question = other[4].question;
  EXPECT_EQ(code(other), "out-of-turn event 2");
  other = log;
  other[3].question = other[1].question;
  EXPECT_EQ(code(other), "out-of-turn event 3");
  other = log;
  other[3].at_ms = 0;
  EXPECT_EQ(code(other), "time-runs-back event 3");
  other = log;
  other[2].answer = {};
  other[2].answer.picked = {"no-such-option"};
  EXPECT_EQ(code(other), "answer-shape event 2");
  other = log;
  other[1].question = "no-such-question";
  EXPECT_EQ(code(other), "unknown-question event 1");
}

}  // namespace
}  // namespace rehale::check
