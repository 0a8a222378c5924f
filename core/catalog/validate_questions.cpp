#include <cmath>
#include <limits>

#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

struct Limits {
  std::size_t low, high;
};

Limits option_limits(Kind kind) {
  switch (kind) {
    case Kind::several:
      return {4, 6};
    case Kind::picture:
      return {2, 4};
    case Kind::one:
      return {3, 5};
    default:
      return {2, 6};  // bands
  }
}

void expect_within(const Check& check, std::size_t n, Limits limits, const std::string& pointer) {
  if (n < limits.low || n > limits.high) {
    check(
        pointer, "option-count",
        {std::to_string(n), "; ", std::to_string(limits.low), " to ", std::to_string(limits.high)});
  }
}

// A misconception that is named must rule out `technique` or, when that is empty, a technique of
// the question.
void validate_misconception_of(const Check& check, const Question& question, const Option& option,
                               const std::string& pointer) {
  const auto* held = find(check.family.misconceptions, option.misconception);
  if (held == nullptr) {
    return expect_known(check, check.family.misconceptions, option.misconception,
                        pointer + "/misconception", "misconception");
  }
  if (find(check.family.techniques, held->rules_out) == nullptr)
    return;  // told at the misconception
  const bool fits = option.technique.empty() ? holds(question.techniques, held->rules_out)
                                             : option.technique == held->rules_out;
  if (!fits) {
    check(pointer + "/misconception", "misconception-mismatch",
          {"it rules out \"", held->rules_out, "\", which is not what this is about"});
  }
}

// An option or band of a question with one right answer.
void validate_choice(const Check& check, const Question& question, const Option& option,
                     const std::string& pointer) {
  const bool names = !option.technique.empty() || !option.misconception.empty();
  if (option.right && names)
    check(pointer, "right-betrays", {"a right option names no technique and no misconception"});
  if (!option.right && !names)
    check(pointer, "wrong-says-nothing", {"name the technique or misconception it betrays"});
  expect_known(check, check.family.techniques, option.technique, pointer + "/technique",
               "technique");
  if (find(check.family.techniques, option.technique) != nullptr &&
      !holds(question.techniques, option.technique)) {
    check(pointer + "/technique", "technique-not-asked",
          {"\"", option.technique, "\" is not among the question's techniques"});
  }
  validate_misconception_of(check, question, option, pointer);
}

void validate_one_right(const Check& check, const Question& question, const std::string& pointer) {
  const auto right = std::count_if(question.options.begin(), question.options.end(),
                                   [](const Option& option) { return option.right; });
  if (right != 1) {
    check(pointer + "/options", "one-right",
          {std::to_string(right), " are right; exactly one must be"});
  }
  for (std::size_t i = 0; i < question.options.size(); ++i)
    validate_choice(check, question, question.options[i], at(pointer + "/options", i));
  if (question.techniques.empty() || question.techniques.size() > 2)
    check(pointer + "/techniques", "question-techniques", {"one or two for this kind"});
}

void validate_several(const Check& check, const Question& question, const std::string& pointer) {
  int right = 0, wrong = 0;
  for (std::size_t i = 0; i < question.options.size(); ++i) {
    const auto& option = question.options[i];
    const auto place = at(pointer + "/options", i);
    ++(option.right ? right : wrong);
    if (option.technique.empty())
      check(place, "option-technique", {"name the technique it asks about"});
    if (option.right && !option.misconception.empty())
      check(place, "right-betrays", {"a right option names no misconception"});
    expect_known(check, check.family.techniques, option.technique, place + "/technique",
                 "technique");
    if (find(check.family.techniques, option.technique) != nullptr &&
        !holds(question.techniques, option.technique)) {
      check(pointer + "/techniques", "question-techniques",
            {"\"", option.technique, "\" of option \"", option.id, "\" is missing here"});
    }
    validate_misconception_of(check, question, option, place);
  }
  if (right < 2 || wrong < 1)
    check(pointer + "/options", "several-right", {"at least two right and one wrong"});
  for (std::size_t i = 0; i < question.techniques.size(); ++i) {
    if (std::none_of(question.options.begin(), question.options.end(), [&](const Option& option) {
          return option.technique == question.techniques[i];
        }))
      check(at(pointer + "/techniques", i), "question-techniques", {"no option asks about it"});
  }
}

// Half-open bands side by side from `from` to `to`, in any order: no two start at one place, and
// each but the first starts where one other ends.
void validate_bands(const Check& check, const Question& question, const std::string& pointer,
                    double from, double to) {
  const auto& bands = question.options;
  const auto count = [&](double Option::*edge, double place) {
    int n = 0;
    for (const auto& band : bands) n += band.*edge == place ? 1 : 0;
    return n;
  };
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const auto place = at(pointer + "/options", i);
    const double start = bands[i].from;
    const int before = count(&Option::to, start) + (start == from ? 1 : 0);
    if (before != 1 || count(&Option::from, start) != 1)
      check(place + "/from", "band-gap", {"one band must end here and this alone must start here"});
    if (!(bands[i].to > start)) check(place + "/to", "upside-down", {"must be above \"from\""});
  }
  if (!bands.empty() && count(&Option::to, to) != 1)
    check(pointer + "/options", "band-cover", {"one band must end where the answers end"});
}

void validate_range(const Check& check, const Question& question, const std::string& pointer) {
  const auto& range = question.range;
  if (!(range.step > 0 && range.min < range.max && range.start >= range.min &&
        range.start <= range.max)) {
    return check(pointer + "/range", "bad-range",
                 {"step above 0, min below max, start between them"});
  }
  for (const auto& option : question.options) {
    if (!option.right) continue;
    const double steps = std::ceil((std::max(option.from, range.min) - range.min) / range.step);
    const double first = range.min + steps * range.step;  // first answer not below the band
    if (!(first < option.to && first <= range.max))
      check(pointer + "/range", "range-misses", {"no answer in the range is right"});
  }
}

void validate_timing(const Check& check, const Question& question, const std::string& pointer) {
  const double infinity = std::numeric_limits<double>::infinity();
  validate_bands(check, question, pointer, 0, infinity);
  const auto* criterion = find_criterion(check.library, check.family, question.criterion);
  if (criterion == nullptr) {
    return check(pointer + "/criterion", "unknown-criterion",
                 {"there is no criterion \"", question.criterion, "\""});
  }
  if (criterion->unit != question.range.unit)
    check(pointer + "/range/unit", "unit-mismatch", {"the criterion is in ", criterion->unit});
  for (std::size_t i = 0; i < question.options.size(); ++i) {
    const auto& band = question.options[i];
    if (band.right && (band.from != criterion->pass_low.value_or(0) ||
                       band.to != criterion->pass_high.value_or(infinity))) {
      check(at(pointer + "/options", i), "band-not-criterion",
            {"the right band must be what \"", criterion->id, "\" passes"});
    }
  }
}

void validate_cards(const Check& check, const Question& question, const std::string& pointer) {
  expect_within(check, question.actions.size(), {4, 6}, pointer + "/actions");
  expect_unique(check, question.actions, pointer + "/actions");
  for (std::size_t i = 0; i < question.actions.size(); ++i) {
    expect_known(check, check.family.actions, question.actions[i], at(pointer + "/actions", i),
                 "action");
  }
}

void validate_question(const Check& check, const Question& question, const std::string& pointer) {
  expect_unique(check, question.techniques, pointer + "/techniques");
  for (std::size_t i = 0; i < question.techniques.size(); ++i) {
    expect_known(check, check.family.techniques, question.techniques[i],
                 at(pointer + "/techniques", i), "technique");
  }
  if (question.kind == Kind::order) return validate_cards(check, question, pointer);

  expect_within(check, question.options.size(), option_limits(question.kind), pointer + "/options");
  expect_unique(check, question.options, pointer + "/options");
  if (question.kind == Kind::several) return validate_several(check, question, pointer);

  validate_one_right(check, question, pointer);
  for (std::size_t i = 0; i < question.options.size(); ++i) {
    if (question.kind != Kind::picture || !question.options[i].pose.empty()) continue;
    check(at(pointer + "/options", i, "/pose"), "too-few-values", {"name what the picture shows"});
  }
  if (question.kind == Kind::timing) validate_timing(check, question, pointer);
  if (question.kind == Kind::numbers) {
    validate_bands(check, question, pointer, question.range.min,
                   question.range.max + question.range.step);
  }
  if (question.kind == Kind::timing || question.kind == Kind::numbers)
    validate_range(check, question, pointer);
}

}  // namespace

void validate_questions(const Check& check) {
  const auto& questions = check.family.questions;
  expect_unique(check, questions, "/questions");
  for (std::size_t i = 0; i < questions.size(); ++i) {
    const auto pointer = at("/questions", i);
    const bool kind_known = !check.report.bad_form(check.file, pointer + "/kind");
    if (kind_known) validate_question(check, questions[i], pointer);
  }
}

}  // namespace rehale::catalog
