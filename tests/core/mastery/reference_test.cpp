// Whole runs on random models against plain enumeration over all states in Python with numpy:
// tests/reference/mastery/{make.py,brute.py,random.json}. The shipped content is held against the
// same enumeration by make.py --check.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/support/bank_json.h"
#include "tests/support/fixture.h"
#include "tests/support/run_json.h"

namespace {

using namespace rehale::mastery;
using nlohmann::json;

const json& fixture() {
  static const json cases = json::parse(rehale::support::read_text(rehale::support::source_path(
                                            "tests/reference/mastery/random.json")),
                                        nullptr, false)["cases"];
  return cases;
}

Plan plan_of(const json& said) {
  Plan plan;
  plan.aim = said["aim"] == "whole" ? Aim::whole : Aim::decision;
  plan.fewest = said["fewest"].get<int>();
  plan.most = said["most"].get<int>();
  if (said.contains("near")) plan.near = plan.near_recent = 0;
  return plan;
}

// Numbers within 1e-12, all else alike.
void expect_alike(const json& got, const json& wanted, const std::string& where) {
  if (wanted.is_number_float()) {
    ASSERT_TRUE(got.is_number()) << where;
    EXPECT_NEAR(got.get<double>(), wanted.get<double>(), 1e-12) << where;
  } else if (wanted.is_structured()) {
    ASSERT_EQ(got.size(), wanted.size()) << where;
    for (const auto& [key, value] : wanted.items()) {
      expect_alike(got.is_array() ? got[static_cast<std::size_t>(std::stoi(key))] : got[key], value,
                   where + "/" + key);
    }
  } else {
    EXPECT_EQ(got, wanted) << where;
  }
}

TEST(Enumeration, there_are_fourteen_runs_of_every_ending) {
  ASSERT_EQ(fixture().size(), 14U);
  std::vector<std::string> ends;
  for (const json& one : fixture()) ends.push_back(one["end"].get<std::string>());
  for (const char* end : {"decided", "nothing_useful", "longest"}) {
    EXPECT_NE(std::find(ends.begin(), ends.end(), end), ends.end()) << end;
  }
}

TEST(Enumeration, finds_the_same_questions_information_and_posterior_in_every_run) {
  for (std::size_t number = 0; number < fixture().size(); ++number) {
    const json& one = fixture()[number];
    const auto bank = rehale::support::bank_from_json(one["bank"]);
    ASSERT_TRUE(bank) << bank.error().detail;
    Diagnosis run(*bank, plan_of(one["plan"]), one["seed"].get<std::uint64_t>());
    const auto recent = one["recent"].get<std::vector<int>>();
    std::size_t count = 0;
    for (const json& step : one["steps"]) {
      const std::string where = "case " + std::to_string(number) + " step " + std::to_string(count);
      const Next next = run.next(recent);
      ASSERT_EQ(next.stop, Stop::go_on) << where;
      ASSERT_EQ(next.item, step["item"].get<int>()) << where;
      const json got =
          rehale::support::play(run, *bank, next.item, step["columns"].get<std::vector<int>>());
      expect_alike(got, step, where);
      ++count;
    }
    EXPECT_EQ(rehale::support::stop_name(run.next(recent).stop), one["end"].get<std::string>());
  }
}

}  // namespace
