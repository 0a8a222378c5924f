// The good family loads whole; the bank as a whole is held to its rules; nothing broken gets
// through.
#include "core/catalog/load.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "core/catalog/lookup.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using support::load_bubble_pipe;
using support::ok_files;
using support::replace_in;
using support::said;

TEST(LoadFamily, the_good_family_loads_whole) {
  const auto loaded = load_bubble_pipe(ok_files());
  ASSERT_TRUE(loaded.value.has_value()) << said(loaded.findings);
  const auto& family = *loaded.value;
  EXPECT_EQ(family.speed, "slow");
  EXPECT_EQ(family.doses_at_start, 12);
  EXPECT_EQ(family.actions.size(), 8U);
  EXPECT_EQ(family.ideal.size(), 7U);
  EXPECT_EQ(family.questions.size(), 28U);
  const auto* load_action = catalog::find(family.actions, "load");
  ASSERT_NE(load_action, nullptr);
  EXPECT_TRUE(load_action->needs[0].blocks);
  EXPECT_FALSE(load_action->needs[1].blocks);
  EXPECT_EQ(load_action->effects[0].dose, catalog::DoseChange::load);
  EXPECT_EQ(family.rules[1].misconception, "loads-twice");
  EXPECT_EQ(family.criteria[0].pass_high, 6);
  EXPECT_EQ(family.techniques[5].weight, 1);
  EXPECT_TRUE(family.techniques[5].critical);
  const auto* timing = catalog::find(family.questions, "how-long");
  ASSERT_NE(timing, nullptr);
  EXPECT_EQ(timing->kind, catalog::Kind::timing);
  EXPECT_EQ(timing->options[1].to, std::numeric_limits<double>::infinity());
}

TEST(LoadFamily, loads_without_poses_as_the_page_does) {
  auto files = ok_files();
  files.poses.reset();
  EXPECT_TRUE(load_bubble_pipe(files).value.has_value());
}

TEST(LoadFamily, a_byte_order_mark_and_windows_line_ends_do_no_harm) {
  auto files = ok_files();
  std::string bytes = "\xEF\xBB\xBF";
  for (const char c : files.procedure.bytes)
    bytes += c == '\n' ? std::string("\r\n") : std::string(1, c);
  files.procedure = support::exact("procedure.json", bytes);
  const auto loaded = load_bubble_pipe(files);
  EXPECT_TRUE(loaded.value.has_value()) << said(loaded.findings);
}

// ---- what the bank as a whole must do (texts left out: they would tell of each question taken) -

catalog::FamilyFiles without_texts() {
  auto files = ok_files();
  files.texts.clear();
  return files;
}

void drop_line(catalog::ContentFile& file, const std::string& holding) {
  const auto at = file.bytes.find(holding);
  ASSERT_NE(at, std::string::npos) << holding;
  const auto start = file.bytes.rfind('\n', at);
  file.bytes.erase(start, file.bytes.find('\n', at) - start);
}

std::vector<std::string> found_in(const catalog::FamilyFiles& files) {
  std::vector<std::string> all;
  for (const auto& f : load_bubble_pipe(files).findings)
    all.push_back(f.file + '#' + f.pointer + ' ' + f.rule);
  return all;
}

using Found = std::vector<std::string>;

TEST(LoadFamily, a_technique_needs_questions_of_two_kinds) {
  auto files = without_texts();
  replace_in(files.questions, "\"id\": \"hold-level-picture\", \"kind\": \"picture\"",
             "\"id\": \"hold-level-picture\", \"kind\": \"one\"");
  replace_in(
      files.questions,
      "{\"id\": \"a\", \"right\": true, \"pose\": [\"open\"]}, {\"id\": \"b\", \"technique\": "
      "\"hold-level\", \"pose\": [\"shut\"]}",
      "{\"id\": \"a\", \"right\": true}, {\"id\": \"b\", \"technique\": \"hold-level\"}, "
      "{\"id\": \"c\", "
      "\"technique\": \"hold-level\"}");
  EXPECT_EQ(found_in(files), (Found{"procedure.json#/techniques/1 technique-probes"}));
}

TEST(LoadFamily, a_critical_technique_needs_three_questions) {
  auto files = without_texts();
  drop_line(files.questions, "\"slow-breath-later\"");
  EXPECT_EQ(found_in(files), (Found{"questions.json#/questions question-count",
                                    "procedure.json#/techniques/5 technique-probes",
                                    "procedure.json#/misconceptions/0 misconception-probes"}));
}

TEST(LoadFamily, a_technique_needs_a_question_of_its_own) {
  auto files = without_texts();
  for (int i = 0; i < 3; ++i) {
    replace_in(files.questions, "\"techniques\": [\"hold-level\"]",
               "\"techniques\": [\"hold-level\", \"close-lid\"]");
  }
  EXPECT_EQ(found_in(files), (Found{"procedure.json#/techniques/1 technique-not-alone"}));
}

TEST(LoadFamily, every_kind_of_question_is_used) {
  auto files = without_texts();
  drop_line(files.questions, "\"in-order\"");
  EXPECT_EQ(found_in(files), (Found{"questions.json#/questions question-count",
                                    "questions.json#/questions kind-unused"}));
}

TEST(LoadFamily, a_critical_technique_bears_on_the_device_or_a_number) {
  auto files = without_texts();
  replace_in(files.procedure, "\"technique\": \"slow-breath\", \"unit\"", "\"unit\"");
  EXPECT_EQ(found_in(files), (Found{"procedure.json#/techniques/5 critical-not-enforced"}));
}

TEST(LoadFamily, the_ideal_run_must_be_flawless) {
  auto files = without_texts();
  replace_in(files.procedure, "\"load\", \"blow-out\"", "\"load\", \"load\", \"blow-out\"");
  EXPECT_EQ(found_in(files),
            (Found{"procedure.json#/ideal/2 ideal-run", "procedure.json#/ideal ideal-run"}));
}

TEST(LoadFamily, an_order_question_must_ask_something) {
  auto files = without_texts();
  replace_in(files.questions,
             "[\"open-lid\", \"load-once\", \"blow-out-first\", \"hold-breath\"], \"actions\": "
             "[\"open-lid\", "
             "\"load\", \"blow-out\", \"breathe-in\", \"hold-breath\"]",
             "[\"open-lid\"], \"actions\": [\"open-lid\", \"load\", \"blow-out\", \"tip-over\"]");
  EXPECT_EQ(found_in(files), (Found{"questions.json#/questions/25/actions order-too-free"}));
}

TEST(LoadFamily, tells_of_all_files_at_once) {
  auto files = ok_files();
  replace_in(files.procedure, "\"slow\"", "\"brisk\"");
  replace_in(files.questions, "\"criterion\": \"hold\"", "\"criterion\": \"grip\"");
  replace_in(files.texts.front().file, "\"It makes bubbles.\"", "\"\"");
  replace_in(*files.poses, "\"shut\": {}", "\"shuts\": {}");
  const auto all = found_in(files);
  EXPECT_EQ(all.size(), 3U + 9U) << said(
      load_bubble_pipe(files).findings);  // "shut" is named in 9 places
  for (const char* one :
       {"procedure.json#/speed unknown-speed",
        "questions.json#/questions/26/criterion unknown-criterion", "text.en.json#/tell empty-text",
        "questions.json#/questions/24/pose/0 unknown-pose"})
    EXPECT_NE(std::find(all.begin(), all.end(), one), all.end()) << one;
}

TEST(LoadFamily, files_that_are_no_json_are_told_each) {
  auto files = ok_files();
  files.procedure.bytes.resize(files.procedure.bytes.size() / 2);
  files.questions.bytes = "[]";
  EXPECT_EQ(found_in(files).front(), "procedure.json# broken-json");
  files.questions.bytes.clear();
  EXPECT_EQ(found_in(files), (Found{"procedure.json# broken-json", "questions.json# broken-json"}));
}

TEST(LoadFamily, values_of_any_wrong_type_are_findings_not_crashes) {
  for (const char* put : {"null", "7", "\"x\"", "[]", "{}", "true", "[[[]]]", "[{}]"}) {
    for (const char* key :
         {"variables", "actions", "rules", "criteria", "techniques", "misconceptions"}) {
      auto files = ok_files();
      const auto start = files.procedure.bytes.find(std::string("  \"") + key + "\": [");
      const auto end = files.procedure.bytes.find("\n  ]", start) + 4;
      files.procedure.bytes.replace(start, end - start, std::string("  \"") + key + "\": " + put);
      EXPECT_FALSE(load_bubble_pipe(files).value.has_value()) << key << ' ' << put;
    }
  }
}

}  // namespace
