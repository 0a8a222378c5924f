// A person with one known habit gets exactly that advice; what is right is named, practice counts
// apart.
#include "core/advice/advice.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/check/family_bank.h"
#include "tests/support/courses.h"

namespace rehale::advice {
namespace {

using support::scripted_run;
using support::shipped_course;

class AdviceForEveryFamily : public testing::TestWithParam<std::string> {
 protected:
  const check::Course& course() { return *shipped_course(GetParam()); }
};
INSTANTIATE_TEST_SUITE_P(Shipped, AdviceForEveryFamily,
                         testing::ValuesIn(support::shipped_families()), [](const auto& family) {
                           std::string name = family.param;
                           std::ranges::replace(name, '-', '_');
                           return name;
                         });

TEST_P(AdviceForEveryFamily, who_has_everything_has_nothing_to_mend_and_is_ready) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const check::Run run = scripted_run(course(), {.seed = seed});
    const Advice advice = advise(run);
    EXPECT_TRUE(advice.to_mend.empty()) << seed;
    EXPECT_TRUE(advice.differing.empty());
    EXPECT_TRUE(advice.ready) << seed;
  }
}

TEST_P(AdviceForEveryFamily, one_lacking_critical_technique_is_the_first_and_only_thing_to_mend) {
  const auto& techniques = course().family.techniques;
  for (std::size_t k = 0; k < techniques.size(); ++k) {
    if (!techniques[k].critical) continue;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
      const check::Run run = scripted_run(course(), {.lacks = {techniques[k].id}, .seed = seed});
      const Advice advice = advise(run);
      ASSERT_FALSE(advice.to_mend.empty()) << techniques[k].id << " seed " << seed;
      EXPECT_EQ(advice.to_mend.front().technique, static_cast<int>(k)) << "seed " << seed;
      EXPECT_EQ(advice.to_mend.size(), 1U) << techniques[k].id << " seed " << seed;
      EXPECT_FALSE(advice.ready);
    }
  }
}

TEST_P(AdviceForEveryFamily, a_held_misconception_is_named_as_the_reason) {
  const auto& family = course().family;
  for (std::size_t b = 0; b < family.misconceptions.size(); ++b) {
    const auto& rule = family.misconceptions[b];
    const int technique = check::technique_index(family, rule.rules_out);
    if (!family.techniques[static_cast<std::size_t>(technique)].critical) continue;
    int named = 0;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
      const check::Run run =
          scripted_run(course(), {.lacks = {rule.rules_out}, .holds = {rule.id}, .seed = seed});
      for (const ToMend& item : advise(run).to_mend) {
        if (item.technique == technique && item.misconception == static_cast<int>(b)) ++named;
      }
    }
    EXPECT_GE(named, 7) << rule.id << ": of 10 runs";
  }
}

TEST_P(AdviceForEveryFamily, the_list_is_ranked_by_need_and_says_what_was_answered) {
  const auto& techniques = course().family.techniques;
  std::vector<std::string> lacks;
  for (const auto& one : techniques) lacks.push_back(one.id);
  const check::Run run = scripted_run(course(), {.lacks = lacks, .seed = 5});
  const Advice advice = advise(run);
  EXPECT_GT(advice.to_mend.size(), 3U);
  EXPECT_TRUE(std::ranges::is_sorted(advice.to_mend, std::greater{}, &ToMend::need));
  for (const ToMend& item : advice.to_mend) {
    EXPECT_EQ(item.shown, !item.because.empty());
    for (const Because& because : item.because) EXPECT_FALSE(because.parts.empty());
  }
}

TEST_P(AdviceForEveryFamily, practice_counts_apart_and_leaves_the_first_result_as_it_is) {
  const auto& family = course().family;
  const auto lacking = std::ranges::find_if(family.techniques, &catalog::Technique::critical);
  check::Run run = scripted_run(course(), {.lacks = {lacking->id}, .seed = 6});
  const Advice before = advise(run);
  const int technique = before.to_mend.front().technique;
  const auto question = run.practice_question(technique);
  ASSERT_TRUE(question);
  const auto& asked = family.questions[static_cast<std::size_t>(*question)];
  const double at_ms = run.log().back().at_ms;
  ASSERT_TRUE(run.apply({.what = check::What::retry_shown, .at_ms = at_ms, .question = asked.id}));
  check::Event answered{.what = check::What::retry_answered, .at_ms = at_ms, .question = asked.id};
  answered.answer = check::right_answer(family, asked);
  ASSERT_TRUE(run.apply(answered));
  EXPECT_EQ(practice_of(run, technique).tries, 1);
  EXPECT_EQ(practice_of(run, technique).right, 1);
  const Advice after = advise(run);
  ASSERT_EQ(after.to_mend.size(), before.to_mend.size());
  EXPECT_EQ(after.to_mend.front().lacking, before.to_mend.front().lacking);
  EXPECT_NE(run.practice_question(technique), question) << "practice asks a fresh question";
}

TEST_P(AdviceForEveryFamily, practice_is_fresh_first_then_repeats_the_check_and_ends) {
  const auto& family = course().family;
  const std::string lacking = family.techniques.back().id;
  check::Run run = scripted_run(course(), {.lacks = {lacking}, .seed = 7});
  const int technique = static_cast<int>(family.techniques.size()) - 1;
  const double at_ms = run.log().back().at_ms;
  std::vector<int> practised;
  bool fresh = true;
  while (const auto question = run.practice_question(technique)) {
    EXPECT_EQ(std::ranges::count(practised, *question), 0);
    const bool asked =
        std::ranges::find(run.given(), *question, &check::Given::question) != run.given().end();
    EXPECT_TRUE(fresh || asked) << "a fresh question after a repeated one";
    fresh = !asked;
    practised.push_back(*question);
    const auto& id = family.questions[static_cast<std::size_t>(*question)].id;
    check::Event told{.what = check::What::retry_answered, .at_ms = at_ms, .question = id};
    told.answer.unsure = true;
    ASSERT_TRUE(run.apply({.what = check::What::retry_shown, .at_ms = at_ms, .question = id}));
    ASSERT_TRUE(run.apply(told));
  }
  EXPECT_EQ(static_cast<std::ptrdiff_t>(practised.size()),
            std::ranges::count_if(family.questions, [&](const auto& question) {
              return std::ranges::find(question.techniques, lacking) != question.techniques.end();
            }));
}

TEST(Advice, answers_that_do_not_fit_together_are_named) {
  const check::Course& course = *shipped_course("spray");
  check::Event begin{.what = check::What::begin};
  begin.family = "spray";
  begin.content = course.content;
  check::Run run = *check::Run::begin(course, begin);
  const auto ask = [&](const std::string& id, const std::vector<std::string>& lacks) {
    check::Event answered{.what = check::What::answered, .question = id};
    answered.answer = support::scripted_answer(course, check::question_index(course.family, id),
                                               lacks, {"sucks-hard"});
    ASSERT_TRUE(run.apply({.what = check::What::shown, .question = id}));
    ASSERT_TRUE(run.apply(answered));
  };
  ask("breath-speed", {});           // slow, as wanted…
  ask("powder-too", {"slow-deep"});  // …and hard, as with a powder inhaler
  while (const auto next = run.next_question()) {
    ask(course.family.questions[static_cast<std::size_t>(*next)].id, {});
  }
  const Advice advice = advise(run);
  ASSERT_EQ(advice.differing.size(), 1U);
  const Differing& one = advice.differing.front();
  EXPECT_EQ(course.family.techniques[static_cast<std::size_t>(one.technique)].id, "slow-deep");
  EXPECT_EQ(one.right.parts, std::vector<std::string>{"slow"});
  EXPECT_EQ(one.other.parts, std::vector<std::string>{"same"});
}

}  // namespace
}  // namespace rehale::advice
