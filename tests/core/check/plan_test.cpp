// What an educator sets is kept: the techniques in focus are asked about in every run, the number
// of questions is the one set, and the verdict still follows from the answers alone.
#include "core/check/plan.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/check/family_bank.h"
#include "core/check/read_through.h"
#include "core/exchange/run_json.h"
#include "tests/support/courses.h"

namespace rehale::check {
namespace {

using support::Script;
using support::scripted_run;
using support::shipped_course;
using support::shipped_families;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// By the content alone: a question that names the technique among what its right answer needs.
bool was_asked_about(const check::Run& run, const Id& technique) {
  return std::ranges::any_of(run.given(), [&](const Given& given) {
    const auto& needs = run.course().family.questions[at(given.question)].techniques;
    return std::ranges::find(needs, technique) != needs.end();
  });
}

// Nats told about each technique in focus, by the same questions asked again.
double least_told(const check::Run& run) {
  mastery::Diagnosis diagnosis(run.course().bank, plan_of(run.course().family, run.log().front()),
                               0);
  for (const Given& given : run.given()) {
    diagnosis.ask(given.question);
    diagnosis.answer(given.question, given.marking.columns);
  }
  double least = 1;
  for (const Id& id : run.log().front().focus)
    least = std::min(least, diagnosis.told(technique_index(run.course().family, id)));
  return least;
}

std::vector<Id> minor_techniques(const catalog::Family& family) {
  std::vector<Id> ids;
  for (const auto& technique : family.techniques) {
    if (!technique.critical) ids.push_back(technique.id);
  }
  return ids;
}

// Each technique that is no critical one in focus: always probed; without focus it is now and then
// left out.
TEST(Plan, a_technique_in_focus_is_always_probed) {
  for (const auto& id : shipped_families()) {
    const Course& course = *shipped_course(id);
    int left_out_without = 0;
    for (const Id& technique : minor_techniques(course.family)) {
      for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        Script script{.lacks = {course.family.techniques[seed % 7].id}, .seed = seed};
        left_out_without += was_asked_about(scripted_run(course, script), technique) ? 0 : 1;
        script.focus = {technique};
        script.questions = seed % 2 == 0 ? 0 : static_cast<int>(6 + seed % 7);
        const check::Run run = scripted_run(course, script);
        EXPECT_TRUE(was_asked_about(run, technique)) << id << " " << technique << " " << seed;
        EXPECT_GE(least_told(run), k_plan.probe_nats) << id << " " << technique << " " << seed;
      }
    }
    EXPECT_GT(left_out_without, 0) << id << ": this test could not fail";
  }
}

// All of them at once, in the shortest check that can be set, where critical ones do not all fit.
TEST(Plan, every_technique_in_focus_is_probed_even_in_the_shortest_check) {
  for (const auto& id : shipped_families()) {
    const Course& course = *shipped_course(id);
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
      Script script{.seed = seed};
      script.lacks = {course.family.techniques[seed % 9 % course.family.techniques.size()].id};
      script.focus = minor_techniques(course.family);
      script.questions = k_fewest_set;
      const check::Run run = scripted_run(course, script);
      ASSERT_EQ(run.given().size(), 6U);
      for (const Id& technique : script.focus)
        EXPECT_TRUE(was_asked_about(run, technique)) << id << " " << technique << " " << seed;
      EXPECT_GE(least_told(run), k_plan.probe_nats) << id << " " << seed;
    }
  }
}

TEST(Plan, exactly_the_number_of_questions_set_is_asked) {
  for (const auto& id : shipped_families()) {
    const Course& course = *shipped_course(id);
    for (int questions = k_fewest_set; questions <= k_most_set; ++questions) {
      for (const bool lacking : {false, true}) {
        Script script{.seed = 5};
        if (lacking) script.lacks = {course.family.techniques[1].id};
        script.questions = questions;
        const check::Run run = scripted_run(course, script);
        EXPECT_EQ(run.given().size(), at(questions)) << id;
        EXPECT_TRUE(run.finished());
      }
    }
  }
}

TEST(Plan, nothing_set_changes_nothing) {
  for (const auto& id : shipped_families()) {
    const mastery::Plan plan = plan_of(shipped_course(id)->family, {});
    EXPECT_EQ(plan.must, 0U);
    EXPECT_EQ(plan.fewest, k_plan.fewest);
    EXPECT_EQ(plan.most, k_plan.most);
    EXPECT_TRUE(plan.may_stop);
  }
}

// So a desk that reads many results need not know what was set.
TEST(Plan, the_verdict_is_the_same_without_knowing_what_was_set) {
  for (const auto& id : shipped_families()) {
    const Course& course = *shipped_course(id);
    Script script{.lacks = {course.family.techniques[2].id}, .seed = 3};
    script.focus = minor_techniques(course.family);
    script.questions = 11;
    const check::Run run = scripted_run(course, script);
    Log bare = run.log();
    bare.front().focus.clear();
    bare.front().questions = 0;
    const auto read = read_through(course, bare);
    ASSERT_TRUE(read) << read.error().detail;
    const auto verdict = run.verdict();
    for (std::size_t n = 0; n < verdict.techniques.size(); ++n) {
      EXPECT_EQ(read->verdict.techniques[n].probability, verdict.techniques[n].probability);
      EXPECT_EQ(read->verdict.techniques[n].label, verdict.techniques[n].label);
      EXPECT_EQ(read->verdict.techniques[n].probed, verdict.techniques[n].probed);
    }
  }
}

TEST(Plan, what_was_set_comes_back_from_the_log_as_text) {
  const Course& course = *shipped_course("spray");
  Script script{.seed = 3};
  script.focus = {course.family.techniques[4].id};
  script.questions = 7;
  const check::Run run = scripted_run(course, script);
  const auto log = exchange::read_log(exchange::write_log(run.log()));
  ASSERT_TRUE(log);
  EXPECT_EQ(*log, run.log());
  EXPECT_TRUE(check::Run::replay(course, *log)->finished());
}

TEST(Plan, what_cannot_be_set_is_refused) {
  const Course& course = *shipped_course("spray");
  const auto begins = [&course](int questions, std::vector<Id> focus) {
    Event begin{.family = course.family.id, .content = course.content};
    begin.questions = questions;
    begin.focus = std::move(focus);
    return check::Run::begin(course, begin).has_value();
  };
  const Id known = course.family.techniques[0].id;
  EXPECT_TRUE(begins(0, {}));
  EXPECT_TRUE(begins(6, {known}));
  EXPECT_TRUE(begins(12, {known}));
  EXPECT_FALSE(begins(5, {}));
  EXPECT_FALSE(begins(13, {}));
  EXPECT_FALSE(begins(-1, {}));
  EXPECT_FALSE(begins(8, {"no-such-habit"}));
  EXPECT_FALSE(begins(8, {known, known}));
}

TEST(Plan, a_focus_can_be_named_by_the_habit_that_families_share) {
  for (const auto& id : shipped_families()) {
    const auto& family = shipped_course(id)->family;
    for (const auto& technique : family.techniques) {
      if (technique.shared.empty()) continue;
      const std::vector<Id> wished{technique.shared, "no-such-habit"};
      const auto focus = focus_of(family, wished);
      EXPECT_NE(std::ranges::find(focus, technique.id), focus.end()) << id << technique.id;
    }
    EXPECT_TRUE(focus_of(family, {}).empty());
  }
}

}  // namespace
}  // namespace rehale::check
