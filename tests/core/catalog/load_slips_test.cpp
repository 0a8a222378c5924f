// Slips of all sorts in the good family: each is found, at its place, under its rule.
#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>

#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using support::load_bubble_pipe;
using support::ok_files;
using support::replace_in;
using support::said;

// One place in one file said differently, and what must be found then: this alone or, where the
// slip has consequences (sentences of a name that is gone, an ideal run that no longer works), this
// among `all`.
struct Slip {
  const char* name;
  const char* file;
  const char* from;
  const char* to;
  const char* pointer;
  const char* rule;
  std::size_t all = 1;
};

// GoogleTest looks for this name.
// NOLINTNEXTLINE(readability-identifier-naming)
void PrintTo(const Slip& slip, std::ostream* out) { *out << slip.name; }

catalog::ContentFile& file_named(catalog::FamilyFiles& files, const std::string& name) {
  if (name == "procedure.json") return files.procedure;
  if (name == "questions.json") return files.questions;
  if (name == "poses.json") return *files.poses;
  return files.texts.front().file;
}

const char* const k_procedure = "procedure.json";
const char* const k_questions = "questions.json";
const char* const k_text = "text.en.json";

const Slip k_slips[] = {
    {"schema", k_procedure, "\"schema\": 1", "\"schema\": 2", "/schema", "unknown-schema"},
    {"other_family", k_questions, "bubble-pipe", "other-pipe", "/family", "wrong-file"},
    {"speed", k_procedure, "\"slow\"", "\"brisk\"", "/speed", "unknown-speed"},
    {"no_doses", k_procedure, "\"doses_at_start\": 12", "\"doses_at_start\": 0", "/doses_at_start",
     "out-of-range", 2},
    {"missing_key", k_procedure, "\"speed\": \"slow\", ", "", "/speed", "missing-key"},
    {"wrong_type", k_procedure, "\"doses_at_start\": 12", "\"doses_at_start\": \"12\"",
     "/doses_at_start", "wrong-type"},
    {"unknown_key", k_procedure, "\"blocks\": true", "\"block\": true", "/actions/2/needs/0/block",
     "unknown-key"},
    {"duplicate_key", k_procedure, "\"speed\": \"slow\"",
     "\"speed\": \"slow\", \"speed\": \"fast\"", "/speed", "duplicate-key"},
    {"id_form", k_procedure, "{\"id\": \"tip-over\"", "{\"id\": \"tip_over\"", "/actions/1/id",
     "bad-id", 3},
    {"one_value", k_procedure, "[\"level\", \"tipped\"]", "[\"level\"]", "/variables/1/values",
     "too-few-values", 2},
    {"need_variable", k_procedure, "\"variable\": \"tilt\"", "\"variable\": \"angle\"",
     "/actions/2/needs/1/variable", "unknown-variable"},
    {"need_value", k_procedure, "\"any_of\": [\"level\"]", "\"any_of\": [\"flat\"]",
     "/actions/2/needs/1/any_of/0", "unknown-value"},
    {"need_of_nothing", k_procedure, "\"any_of\": [\"level\"]", "\"any_of\": []",
     "/actions/2/needs/1/any_of", "too-few-values", 2},
    {"need_technique", k_procedure, "\"technique\": \"hold-level\"", "\"technique\": \"hold-high\"",
     "/actions/2/needs/1/technique", "unknown-technique"},
    {"effect_variable", k_procedure, "{\"set\": {\"lid\": \"shut\"}}",
     "{\"set\": {\"hat\": \"shut\"}}", "/actions/7/effects/0/set/hat", "unknown-variable"},
    {"effect_value", k_procedure, "{\"set\": {\"lid\": \"shut\"}}",
     "{\"set\": {\"lid\": \"gone\"}}", "/actions/7/effects/0/set/lid", "unknown-value"},
    {"effect_of_nothing", k_procedure, "{\"set\": {\"lid\": \"shut\"}}",
     "{\"when\": {\"lid\": \"open\"}}", "/actions/7/effects/0", "empty-effect"},
    {"dose_word", k_procedure, "\"dose\": \"inhale\"", "\"dose\": \"swallow\"",
     "/actions/5/effects/0/dose", "unknown-dose"},
    {"same_action_twice", k_procedure, "{\"id\": \"tip-over\"", "{\"id\": \"open-lid\"",
     "/actions/1/id", "duplicate-id", 2},
    {"rule_action", k_procedure, "\"after\": \"close-lid\"", "\"after\": \"shut-lid\"",
     "/rules/5/after", "unknown-action"},
    {"rule_misconception", k_procedure, "\"misconception\": \"loads-twice\"",
     "\"misconception\": \"sucks-hard\"", "/rules/1/misconception", "misconception-mismatch"},
    {"rule_cycle", k_procedure, "\"before\": \"blow-out\", \"after\": \"seal-lips\"",
     "\"before\": \"breathe-in\", \"after\": \"seal-lips\"", "/rules", "rule-cycle", 2},
    {"ideal_action", k_procedure, "\"blow-out\", \"seal-lips\", \"breathe-in\"",
     "\"blow-out\", \"shut-lips\", \"breathe-in\"", "/ideal/3", "unknown-action"},
    {"pass_upside_down", k_procedure, "\"pass\": [3, 6]", "\"pass\": [6, 3]", "/criteria/0/pass",
     "upside-down", 2},
    {"target_outside", k_procedure, "\"target\": [3, 5]", "\"target\": [2, 5]",
     "/criteria/0/target", "target-outside-pass"},
    {"source", k_procedure, "\"pass\": [3, 6], \"sources\": [\"Inv01\"]",
     "\"pass\": [3, 6], \"sources\": [\"Inv02\"]", "/criteria/0/sources/0", "unknown-source"},
    {"no_source", k_procedure, "\"pass\": [3, 6], \"sources\": [\"Inv01\"]",
     "\"pass\": [3, 6], \"sources\": []", "/criteria/0/sources", "source-needed"},
    {"status", k_procedure, "\"status\": \"R\"}\n  ],\n  \"techniques\"",
     "\"status\": \"A\"}\n  ],\n  \"techniques\"", "/criteria/0/status", "unknown-status"},
    {"weight", k_procedure, "\"weight\": 1.0", "\"weight\": 1.5", "/techniques/0/weight",
     "out-of-range"},
    {"error_rate", k_procedure, "\"error_rate\": 0.3", "\"error_rate\": 1",
     "/techniques/0/error_rate", "out-of-range"},
    {"shared", k_procedure, "\"shared\": \"seal-lips\"", "\"shared\": \"seal-ears\"",
     "/techniques/4/shared", "unknown-shared-technique"},
    {"shared_twice", k_procedure, "\"shared\": \"hold-breath\"", "\"shared\": \"seal-lips\"",
     "/techniques/6/shared", "duplicate-id"},
    {"rules_out", k_procedure, "\"rules_out\": \"slow-breath\"", "\"rules_out\": \"slow-walk\"",
     "/misconceptions/0/rules_out", "unknown-technique"},
    {"carried_from", k_procedure, "\"carried_from\": \"bubble-pipe\"",
     "\"carried_from\": \"kettle\"", "/misconceptions/0/carried_from", "unknown-family"},
    {"share", k_procedure, "\"share\": 0.4", "\"share\": 0", "/misconceptions/0/share",
     "out-of-range"},
    {"kind", k_questions, "\"kind\": \"timing\"", "\"kind\": \"clock\"", "/questions/26/kind",
     "unknown-kind", 4},
    {"two_right", k_questions, "{\"id\": \"b\", \"technique\": \"open-lid\"}",
     "{\"id\": \"b\", \"right\": true}", "/questions/0/options", "one-right"},
    {"wrong_without_meaning", k_questions, "{\"id\": \"b\", \"technique\": \"open-lid\"}",
     "{\"id\": \"b\"}", "/questions/0/options/1", "wrong-says-nothing"},
    {"right_with_meaning", k_questions, "\"options\": [{\"id\": \"a\", \"right\": true}",
     "\"options\": [{\"id\": \"a\", \"right\": true, \"technique\": \"open-lid\"}",
     "/questions/0/options/0", "right-betrays"},
    {"another_technique", k_questions, "{\"id\": \"b\", \"technique\": \"open-lid\"}",
     "{\"id\": \"b\", \"technique\": \"close-lid\"}", "/questions/0/options/1/technique",
     "technique-not-asked"},
    {"another_misconception", k_questions, "{\"id\": \"b\", \"technique\": \"open-lid\"}",
     "{\"id\": \"b\", \"misconception\": \"sucks-hard\"}", "/questions/0/options/1/misconception",
     "misconception-mismatch"},
    {"same_option_twice", k_questions, "{\"id\": \"b\", \"technique\": \"open-lid\"}",
     "{\"id\": \"c\", \"technique\": \"open-lid\"}", "/questions/0/options/2/id", "duplicate-id",
     3},
    {"same_question_twice", k_questions, "\"id\": \"open-lid-later\"", "\"id\": \"open-lid-first\"",
     "/questions/1/id", "duplicate-id", 8},
    {"picture_of_nothing", k_questions, "\"right\": true, \"pose\": [\"open\"]",
     "\"right\": true, \"pose\": []", "/questions/2/options/0/pose", "too-few-values"},
    {"pose", k_questions, "\"pose\": [\"open\"]", "\"pose\": [\"spare\", \"ajar\"]",
     "/questions/2/options/0/pose/1", "unknown-pose", 3},
    {"several_without_technique", k_questions,
     "{\"id\": \"b\", \"right\": true, \"technique\": \"blow-out-first\"}",
     "{\"id\": \"b\", \"right\": true}", "/questions/24/options/1", "option-technique", 2},
    {"several_one_right", k_questions,
     "{\"id\": \"b\", \"right\": true, \"technique\": \"blow-out-first\"}",
     "{\"id\": \"b\", \"technique\": \"blow-out-first\"}", "/questions/24/options",
     "several-right"},
    {"order_card", k_questions, "\"actions\": [\"open-lid\"", "\"actions\": [\"open-box\"",
     "/questions/25/actions/0", "unknown-action"},
    {"order_card_twice", k_questions, "\"breathe-in\", \"hold-breath\"]}",
     "\"breathe-in\", \"breathe-in\"]}", "/questions/25/actions/4", "duplicate-id", 2},
    {"order_few_cards", k_questions,
     "[\"open-lid\", \"load-once\", \"blow-out-first\", \"hold-breath\"], \"actions\": "
     "[\"open-lid\", \"load\", "
     "\"blow-out\", \"breathe-in\", \"hold-breath\"]",
     "[\"open-lid\", \"load-once\"], \"actions\": [\"open-lid\", \"load\", \"breathe-in\"]",
     "/questions/25/actions", "option-count"},
    {"order_techniques", k_questions, "\"blow-out-first\", \"hold-breath\"]", "\"blow-out-first\"]",
     "/questions/25/techniques", "order-techniques"},
    {"criterion", k_questions, "\"criterion\": \"hold\"", "\"criterion\": \"grip\"",
     "/questions/26/criterion", "unknown-criterion"},
    {"criterion_unit", k_questions, "\"unit\": \"s\"", "\"unit\": \"min\"",
     "/questions/26/range/unit", "unit-mismatch"},
    {"gap", k_questions, "\"from\": 0, \"to\": 5", "\"from\": 0, \"to\": 4",
     "/questions/26/options/1/from", "band-gap"},
    {"bands_overlap", k_questions, "\"from\": 1, \"to\": 2", "\"from\": 0, \"to\": 2",
     "/questions/27/options/1/from", "band-gap", 2},
    {"numbers_end_short", k_questions, "\"from\": 2, \"to\": 10", "\"from\": 2, \"to\": 9",
     "/questions/27/options", "band-cover"},
    {"range_member", k_questions, "\"min\": 0, \"max\": 9", "\"min\": 0, \"max\": 9, \"most\": 3",
     "/questions/27/range/most", "unknown-key"},
    {"start_outside", k_questions, "\"step\": 1, \"start\": 5", "\"step\": 1, \"start\": 50",
     "/questions/27/range", "bad-range"},
    {"missing_text", k_text, "\"reason\": \"Text for reason.\", ", "",
     "/techniques/open-lid/reason", "missing-text"},
    {"empty_text", k_text, "\"tell\": \"It makes bubbles.\"", "\"tell\": \"  \"", "/tell",
     "empty-text"},
    {"unneeded_text", k_text, "\"tell\": ", "\"smell\": \"Of soap.\", \"tell\": ", "/smell",
     "unneeded-text"},
    {"text_not_text", k_text, "\"tell\": \"It makes bubbles.\"", "\"tell\": 7", "/tell",
     "wrong-type"},
    {"language", k_text, "\"language\": \"en\"", "\"language\": \"es\"", "/language", "wrong-file"},
    {"alternative_text", k_text, "\"open\": \"The lid is up.\",", "", "/poses/open",
     "missing-text"},
};

class SlipTest : public testing::TestWithParam<Slip> {};

TEST_P(SlipTest, is_found_at_its_place) {
  const Slip& slip = GetParam();
  auto files = ok_files();
  replace_in(file_named(files, slip.file), slip.from, slip.to);
  const auto loaded = load_bubble_pipe(files);
  EXPECT_FALSE(loaded.value.has_value());
  EXPECT_EQ(loaded.findings.size(), slip.all) << said(loaded.findings);
  const auto named =
      std::count_if(loaded.findings.begin(), loaded.findings.end(), [&](const auto& f) {
        return f.file == slip.file && f.pointer == slip.pointer && f.rule == slip.rule &&
               !f.remedy.empty();
      });
  EXPECT_EQ(named, 1) << said(loaded.findings);
}

INSTANTIATE_TEST_SUITE_P(LoadFamily, SlipTest, testing::ValuesIn(k_slips),
                         [](const auto& slip) { return slip.param.name; });

}  // namespace
