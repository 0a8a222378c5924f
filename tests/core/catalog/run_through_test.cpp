// The run-through part of a family's content: each slip an educator can make is told with its
// place. The bubble pipe of tests/fixtures/family-ok (invented) gets one here, then one thing is
// bent.
#include <gtest/gtest.h>

#include <string>

#include "tests/support/fixture.h"

namespace {

using namespace rehale;

const char* const k_run_through = R"("run_through": {
  "steps": [
    {"action": "open-lid", "technique": "open-lid"},
    {"action": "load", "technique": "load-once"},
    {"action": "blow-out", "part": "breath", "timed": true, "technique": "blow-out-first"},
    {"action": "seal-lips", "technique": "seal-lips", "from": "open-lid", "until": "breathe-in"},
    {"action": "breathe-in", "part": "breath", "timed": true, "technique": "slow-breath"}],
  "once": ["open-lid", "load", "blow-out", "seal-lips", "breathe-in"],
  "timed": [{"criterion": "breath_pipe", "steps": ["breathe-in"], "measure": "lasts",
             "tolerance": 0.5, "sources": [], "status": "CP"}]
  },
  "techniques": [)";

// What is said when `from` in the run-through is `to`.
std::string said_when(const std::string& from, const std::string& to) {
  auto files = support::ok_files();
  support::replace_in(files.procedure, "\"techniques\": [", k_run_through);
  support::replace_in(files.procedure, from, to);
  const auto loaded = support::load_bubble_pipe(files);
  return support::said(loaded.findings);
}

void expect_said(const std::string& from, const std::string& to, const std::string& what) {
  const std::string said = said_when(from, to);
  EXPECT_NE(said.find(what), std::string::npos) << said;
}

TEST(RunThroughContent, that_is_well_is_read) {
  EXPECT_EQ(said_when("\"tolerance\": 0.5", "\"tolerance\": 0.25"), "");
}

TEST(RunThroughContent, with_an_unknown_name_is_told) {
  expect_said("{\"action\": \"load\"", "{\"action\": \"lode\"",
              "/run_through/steps/1/action: unknown-action");
  expect_said("\"from\": \"open-lid\"", "\"from\": \"tip-over\"",
              "/run_through/steps/3/from: unknown-step");
  expect_said("\"once\": [\"open-lid\"", "\"once\": [\"tip-over\"",
              "/run_through/once/0: unknown-step");
  expect_said("\"criterion\": \"breath_pipe\"", "\"criterion\": \"breath\"",
              "/run_through/timed/0/criterion: unknown-criterion");
  expect_said("\"technique\": \"load-once\"},\n    {\"action\": \"blow",
              "\"betrays\": \"x\"},\n    {\"action\": \"blow",
              "/run_through/steps/1/betrays: unknown-misconception");
}

TEST(RunThroughContent, with_an_unknown_word_is_told) {
  expect_said("\"part\": \"breath\"", "\"part\": \"feet\"",
              "/run_through/steps/2/part: unknown-part");
  expect_said("\"measure\": \"lasts\"", "\"measure\": \"last\"",
              "/run_through/timed/0/measure: unknown-measure");
  expect_said("\"tolerance\": 0.5", "\"tolerance\": -1",
              "/run_through/timed/0/tolerance: out-of-range");
  expect_said("\"tolerance\": 0.5, \"sources\": [], \"status\": \"CP\"",
              "\"tolerance\": 0.5, \"sources\": [], \"status\": \"R\"",
              "/run_through/timed/0/sources: source-needed");
}

TEST(RunThroughContent, that_measures_what_has_no_length_is_told) {
  expect_said("\"steps\": [\"breathe-in\"]", "\"steps\": [\"load\"]",
              "/run_through/timed/0/steps/0: not-timed");
  expect_said("\"measure\": \"lasts\"", "\"measure\": \"after-start-of\"",
              "/run_through/timed/0/of: measure-of");
  expect_said("{\"action\": \"load\"", "{\"action\": \"load\", \"ends\": \"tip-over\"",
              "/run_through/steps/1/ends: not-timed");
}

TEST(RunThroughContent, whose_wanted_steps_do_not_give_one_clean_dose_is_told) {
  expect_said("\"once\": [\"open-lid\", \"load\", \"blow-out\"",
              "\"once\": [\"load\", \"open-lid\", \"blow-out\"", "/run_through/once: ideal-run");
  expect_said("\"blow-out\", \"seal-lips\", \"breathe-in\"]", "\"blow-out\", \"seal-lips\"]",
              "/run_through/once: ideal-run");
}

}  // namespace
