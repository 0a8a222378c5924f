// FSRS-6 against npm ts-fsrs over random histories, and the published check sequences.
#include "core/recheck/fsrs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace rehale::recheck {
namespace {

// ts-fsrs rounds to 8 decimals, so small values carry an absolute error of their own.
void expect_same(double ours, double theirs, const std::string& where) {
  EXPECT_NEAR(ours, theirs, 1e-6 * std::max(1.0, theirs)) << where;
}

// "card 3 0 2.3065 2.118 7.64 …": groups of five after the profile.
int follow(const std::string& line) {
  const Profile& profile = line.starts_with("card") ? card_profile() : habit_profile();
  Memory memory;
  int checks = 0;
  for (const char* at = line.c_str() + line.find(' '); *at != '\0'; ++checks) {
    char* end = nullptr;
    const auto take = [&] {
      const double value = std::strtod(at, &end);
      at = end;
      return value;
    };
    const auto grade = static_cast<Grade>(static_cast<int>(take()));
    const double days = take();
    memory = checks == 0 ? first_memory(profile, grade) : next_memory(profile, memory, days, grade);
    expect_same(memory.stability, take(), line);
    expect_same(memory.difficulty, take(), line);
    expect_same(days_until(profile, memory.stability, .8), take(), line);
  }
  return checks;
}

TEST(Fsrs, follows_ts_fsrs_over_random_histories) {
  const auto text =
      support::read_file(support::source_path("tests/reference/recheck/histories.txt"));
  ASSERT_TRUE(text);
  int histories = 0, checks = 0;
  for (std::size_t at = 0; at < text->size(); ++histories) {
    const auto end = text->find('\n', at);
    checks += follow(text->substr(at, end - at));
    at = end + 1;
  }
  EXPECT_EQ(histories, 400);
  EXPECT_GT(checks, 1500);
}

// facts/diagnosis.md 3.2, sequence A: grade 3 at days 0, 2, 11, 46, 163.
TEST(Fsrs, gives_the_published_check_sequence) {
  Memory memory = first_memory(card_profile(), Grade::there);
  EXPECT_NEAR(memory.difficulty, 2.11810397, 1e-8);
  const std::pair<double, double> rows[] = {
      {2, 10.96433194}, {11, 46.28021494}, {46, 162.86219887}, {163, 497.44720499}};
  for (const auto& [days, stability] : rows) {
    memory = next_memory(card_profile(), memory, days, Grade::there);
    EXPECT_NEAR(memory.stability, stability, 1e-6 * stability);
  }
  EXPECT_NEAR(memory.difficulty, 2.09058635, 1e-6);
}

TEST(Fsrs, recall_is_nine_tenths_after_the_stability) {
  for (const Profile* profile : {&card_profile(), &habit_profile()}) {
    EXPECT_NEAR(recall_after(*profile, 12, 12), .9, 1e-12);
    EXPECT_EQ(recall_after(*profile, 12, 0), 1);
    EXPECT_NEAR(days_until(*profile, 12, .9), 12, 1e-9);
    EXPECT_NEAR(recall_after(*profile, 12, days_until(*profile, 12, .37)), .37, 1e-12);
  }
}

// Half of what was learnt is left after 6.5 months (facts/diagnosis.md 3.3, 3.4: 198 days), 25 days
// to .85 and 37 to .80.
TEST(Fsrs, a_habit_fades_as_skills_do) {
  const double stability = first_memory(habit_profile(), Grade::there).stability;
  EXPECT_NEAR(days_until(habit_profile(), stability, .5), 6.5 * 30.5, 1);
  EXPECT_EQ(static_cast<int>(days_until(habit_profile(), stability, .85)), 25);
  EXPECT_EQ(static_cast<int>(days_until(habit_profile(), stability, .80)), 37);
}

// Between what fits people who keep ALL steps and what fits single steps (make.py there).
TEST(Fsrs, a_habit_fades_between_the_measures_of_the_trials) {
  const auto text =
      support::read_file(support::source_path("tests/reference/recheck/evidence.txt"));
  ASSERT_TRUE(text);
  double all_steps = 0, one_step = 0;
  ASSERT_EQ(std::sscanf(text->c_str(), "all-steps %lf one-step %lf", &all_steps, &one_step), 2);
  const double ours = first_memory(habit_profile(), Grade::there).stability;
  EXPECT_GT(ours, all_steps);
  EXPECT_LT(ours, one_step);
}

}  // namespace
}  // namespace rehale::recheck
