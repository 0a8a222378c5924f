#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

void validate_answer(const Check& check, std::size_t step, std::size_t i) {
  const auto& library = check.library;
  const auto& answer = library.finder[step].answers[i];
  const auto pointer = at(at("/finder", step, "/answers"), i);
  expect_known(check, library.families, answer.family, pointer + "/family", "family");
  expect_known(check, library.finder, answer.next, pointer + "/next", "step");
  const int next = index_of(library.finder, answer.next);
  if (next >= 0 && next <= static_cast<int>(step))
    check(pointer + "/next", "finder-order", {"lead on to a later step, so that it ends"});
  if (!answer.family.empty() && !answer.next.empty())
    check(pointer, "finder-both", {"name a family or the next step, not both"});
}

template <class Member>
bool some_answer(const Library& library, Member member, const Id& id) {
  for (const auto& step : library.finder) {
    for (const auto& answer : step.answers)
      if (answer.*member == id) return true;
  }
  return false;
}

void validate_finder(const Check& check) {
  const auto& library = check.library;
  expect_unique(check, library.finder, "/finder");
  for (std::size_t step = 0; step < library.finder.size(); ++step) {
    const auto& answers = library.finder[step].answers;
    expect_unique(check, answers, at("/finder", step, "/answers"));
    if (answers.size() < 2)
      check(at("/finder", step, "/answers"), "option-count", {"a question needs two answers"});
    for (std::size_t i = 0; i < answers.size(); ++i) validate_answer(check, step, i);
    if (step > 0 && !some_answer(library, &FinderStep::Answer::next, library.finder[step].id))
      check(at("/finder", step), "finder-unreached", {"no answer leads here"});
  }
  for (std::size_t i = 0; i < library.families.size(); ++i) {
    if (!some_answer(library, &FinderStep::Answer::family, library.families[i]))
      check(at("/families", i), "finder-misses", {"no answer of the finder names this family"});
  }
}

}  // namespace

void validate_library(const Check& check) {
  const auto& library = check.library;
  expect_unique(check, library.families, "/families");
  expect_unique(check, library.languages, "/languages");
  expect_unique(check, library.shared_techniques, "/shared_techniques");
  expect_unique(check, library.criteria, "/criteria");
  if (library.families.empty()) check("/families", "count", {"name at least one family"});
  if (library.languages.empty()) check("/languages", "count", {"name at least one language"});
  for (std::size_t i = 0; i < library.criteria.size(); ++i) {
    const auto& criterion = library.criteria[i];
    expect_known(check, library.shared_techniques, criterion.technique,
                 at("/criteria", i, "/technique"), "shared-technique");
    if (!criterion.action.empty())
      check(at("/criteria", i, "/action"), "unknown-action", {"a shared number is of no action"});
    validate_criterion(check, criterion, at("/criteria", i));
  }
  validate_finder(check);
}

}  // namespace rehale::catalog
