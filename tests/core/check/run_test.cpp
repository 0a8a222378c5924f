// Runs of the shipped families: a log replays to the same state to the bit, illegal events change
// nothing, questions follow the seed, and two runs in a row share few of them.
#include "core/check/run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>
#include <set>

#include "core/exchange/run_json.h"
#include "tests/support/courses.h"

namespace rehale::check {
namespace {

using support::scripted_run;
using support::shipped_course;

class RunsOfEveryFamily : public testing::TestWithParam<std::string> {
 protected:
  const Course& course() {
    const Course* course = shipped_course(GetParam());
    if (course == nullptr) {
      ADD_FAILURE() << "the content of " << GetParam() << " does not load";
      std::abort();
    }
    return *course;
  }
};
INSTANTIATE_TEST_SUITE_P(Shipped, RunsOfEveryFamily, testing::ValuesIn(support::shipped_families()),
                         [](const auto& family) {
                           std::string name = family.param;
                           std::ranges::replace(name, '-', '_');
                           return name;
                         });

std::vector<std::string> asked(const check::Run& run) {
  std::vector<std::string> ids;
  for (const Given& given : run.given()) {
    ids.push_back(run.course().family.questions[static_cast<std::size_t>(given.question)].id);
  }
  return ids;
}

TEST_P(RunsOfEveryFamily, a_replayed_log_gives_the_same_state_to_the_bit) {
  const Course& it = course();
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    const check::Run run = scripted_run(
        it, {.lacks = {it.family.techniques[static_cast<std::size_t>(seed)].id}, .seed = seed});
    const auto log = exchange::read_log(exchange::write_log(run.log()));
    ASSERT_TRUE(log);
    const auto again = check::Run::replay(it, *log);
    ASSERT_TRUE(again) << again.error().where << again.error().detail;
    const auto one = run.posterior().states();
    const auto other = again->posterior().states();
    ASSERT_EQ(one.size(), other.size());
    EXPECT_EQ(std::memcmp(one.data(), other.data(), one.size_bytes()), 0);
    EXPECT_EQ(again->log(), run.log());
    EXPECT_EQ(again->finished(), run.finished());
  }
}

TEST_P(RunsOfEveryFamily, a_run_has_8_to_12_questions_and_none_twice) {
  const Course& it = course();
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const check::Run run = scripted_run(it, {.lacks = {}, .seed = seed});
    ASSERT_TRUE(run.finished());
    const auto ids = asked(run);
    EXPECT_GE(ids.size(), 8U);
    EXPECT_LE(ids.size(), 12U);
    EXPECT_EQ(std::set<std::string>(ids.begin(), ids.end()).size(), ids.size());
  }
}

TEST_P(RunsOfEveryFamily, every_critical_technique_is_probed_before_it_is_called_had) {
  const Course& it = course();
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const check::Run run = scripted_run(it, {.seed = seed});
    const auto verdict = run.verdict();
    for (std::size_t k = 0; k < it.family.techniques.size(); ++k) {
      if (!it.family.techniques[k].critical) continue;
      EXPECT_TRUE(verdict.techniques[k].probed) << it.family.techniques[k].id << " seed " << seed;
      if (verdict.techniques[k].label == mastery::Label::has_it) {
        const bool named = std::ranges::any_of(run.given(), [&](const Given& given) {
          const auto& about =
              it.family.questions[static_cast<std::size_t>(given.question)].techniques;
          return std::ranges::find(about, it.family.techniques[k].id) != about.end();
        });
        EXPECT_TRUE(named);
      }
    }
  }
}

TEST_P(RunsOfEveryFamily, the_same_seed_asks_the_same_and_two_runs_in_a_row_share_few_questions) {
  const Course& it = course();
  double shared = 0;
  double all = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const auto first = asked(scripted_run(it, {.seed = seed}));
    EXPECT_EQ(first, asked(scripted_run(it, {.seed = seed})));
    const auto second = asked(scripted_run(it, {.seed = seed + 1000, .recent = first}));
    const std::set<std::string> seen(first.begin(), first.end());
    shared += static_cast<double>(
        std::ranges::count_if(second, [&seen](const auto& id) { return seen.contains(id); }));
    all += static_cast<double>(second.size());
  }
  RecordProperty("shared_percent", std::to_string(100 * shared / all));
  EXPECT_LE(shared / all, .25) << "of the second run's questions were in the first";
}

TEST_P(RunsOfEveryFamily, events_out_of_turn_are_refused_and_change_nothing) {
  const Course& it = course();
  check::Run run = scripted_run(it, {.seed = 3});
  const Log before = run.log();
  const double at_ms = before.back().at_ms;
  const Id id = it.family.questions.front().id;
  const Event events[] = {
      {.what = What::begin, .at_ms = at_ms},
      {.what = What::shown, .at_ms = at_ms, .question = id},
      {.what = What::answered, .at_ms = at_ms, .question = id},
      {.what = What::retry_answered, .at_ms = at_ms, .question = id},
      {.what = What::retry_shown, .at_ms = at_ms, .question = "no-such-question"},
      {.what = What::retry_shown, .at_ms = at_ms - 1, .question = id},
  };
  const char* codes[] = {"out-of-turn", "out-of-turn",      "out-of-turn",
                         "out-of-turn", "unknown-question", "time-runs-back"};
  for (std::size_t n = 0; n < std::size(events); ++n) {
    const auto applied = run.apply(events[n]);
    ASSERT_FALSE(applied) << n;
    EXPECT_EQ(applied.error().code, codes[n]) << n;
  }
  EXPECT_EQ(run.log(), before);
}

TEST_P(RunsOfEveryFamily, a_log_of_another_family_or_content_is_told_apart) {
  const Course& it = course();
  Log log = scripted_run(it, {.seed = 3}).log();
  log.front().content = "older";
  EXPECT_EQ(check::Run::replay(it, log).error().code, "begin-mismatch");
  EXPECT_EQ(check::Run::replay(it, {}).error().code, "log-empty");
}

TEST_P(RunsOfEveryFamily, every_prefix_of_a_log_is_a_run_that_can_go_on) {
  const Course& it = course();
  const Log log = scripted_run(it, {.seed = 9}).log();
  for (std::size_t n = 1; n <= log.size(); ++n) {
    const auto run =
        check::Run::replay(it, Log(log.begin(), log.begin() + static_cast<std::ptrdiff_t>(n)));
    ASSERT_TRUE(run);
    EXPECT_TRUE(run->open_question() || run->next_question() || n == log.size());
  }
}

TEST_P(RunsOfEveryFamily, cards_never_lie_in_a_right_order_at_first_and_orders_are_permutations) {
  const Course& it = course();
  const check::Run run = scripted_run(it, {.seed = 4});
  for (int n = 0; n < static_cast<int>(it.family.questions.size()); ++n) {
    const auto& question = it.family.questions[static_cast<std::size_t>(n)];
    auto order = run.shown_order(n);
    if (question.kind == catalog::Kind::order) {
      Answer answer;
      for (const int card : order) {
        answer.picked.push_back(question.actions[static_cast<std::size_t>(card)]);
      }
      EXPECT_FALSE(mark_answer(it.family, question, answer)->right) << question.id;
    }
    std::ranges::sort(order);
    for (int place = 0; place < static_cast<int>(order.size()); ++place) {
      EXPECT_EQ(order[static_cast<std::size_t>(place)], place);
    }
  }
}

TEST_P(RunsOfEveryFamily, the_right_answer_is_marked_right_and_not_sure_never_wrong) {
  const Course& it = course();
  for (const auto& question : it.family.questions) {
    const auto right = mark_answer(it.family, question, right_answer(it.family, question));
    ASSERT_TRUE(right) << question.id << ": " << right.error().detail;
    EXPECT_TRUE(right->right) << question.id;
    const auto unsure = mark_answer(it.family, question, {.unsure = true});
    ASSERT_TRUE(unsure) << question.id;
    EXPECT_TRUE(unsure->marks.empty());
    Answer nonsense;
    nonsense.picked = {"no-such-option"};
    EXPECT_EQ(mark_answer(it.family, question, nonsense).error().code, "answer-shape");
  }
}

TEST_P(RunsOfEveryFamily, every_piece_of_every_question_gets_a_column_it_has) {
  const Course& it = course();
  for (std::size_t n = 0; n < it.family.questions.size(); ++n) {
    const auto& question = it.family.questions[n];
    const auto& pieces = it.bank.items[n].pieces;
    for (const Answer& answer : {right_answer(it.family, question), Answer{.unsure = true}}) {
      const auto marking = mark_answer(it.family, question, answer);
      ASSERT_EQ(marking->columns.size(), pieces.size()) << question.id;
      for (std::size_t p = 0; p < pieces.size(); ++p) {
        EXPECT_LT(marking->columns[p], pieces[p].columns) << question.id;
      }
    }
  }
}

}  // namespace
}  // namespace rehale::check
