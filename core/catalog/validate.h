// Rules of meaning: what form alone cannot tell. Internal to core/catalog; each adds its findings.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/catalog/json_read.h"
#include "core/catalog/load.h"
#include "core/catalog/lookup.h"
#include "core/catalog/model.h"

namespace rehale::catalog {

// What a rule may look at, and where its findings go. Lists in the model stand as in the file, so
// an index is a place.
struct Check {
  const Library& library;
  const Family& family;
  const std::string& file;
  Report& report;

  void operator()(std::string_view pointer, std::string_view rule, Words remedy) const;
};

// "/actions", 3, "/id" -> "/actions/3/id"
[[nodiscard]] std::string at(std::string_view list, std::size_t index, std::string_view rest = "");

[[nodiscard]] bool holds(const std::vector<Id>& ids, const Id& id);

void tell_unknown(const Check& check, const Id& id, const std::string& pointer,
                  std::string_view what);
void tell_duplicate(const Check& check, const Id& id, const std::string& pointer);

// "unknown-<what>" at pointer unless the list has the id; an empty id was reported or is optional.
template <class T>
void expect_known(const Check& check, const std::vector<T>& list, const Id& id,
                  const std::string& pointer, std::string_view what) {
  if (!id.empty() && index_of(list, id) < 0) tell_unknown(check, id, pointer, what);
}

// "duplicate-id" at each element that repeats an earlier id.
template <class T>
void expect_unique(const Check& check, const std::vector<T>& list, std::string_view pointer) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Id* id = nullptr;
    if constexpr (std::is_same_v<T, Id>) id = &list[i];
    else id = &list[i].id;
    if (!id->empty() && index_of(list, *id) < static_cast<int>(i))
      tell_duplicate(check, *id, at(pointer, i, std::is_same_v<T, Id> ? "" : "/id"));
  }
}

void validate_provenance(const Check& check, const Provenance& from, const std::string& pointer);
// Everything but what the criterion is of (action, technique).
void validate_criterion(const Check& check, const Criterion& criterion, const std::string& pointer);

// Findings go to library.json; the family is empty.
void validate_library(const Check& check);

// Findings go to procedure.json: the device and its numbers; techniques and misconceptions; that
// the bank asks about each of these enough; poses of actions.
void validate_procedure(const Check& check);
void validate_dose(const Check& check);
void validate_run_through(const Check& check);
void validate_people(const Check& check);
void validate_probing(const Check& check);
void validate_action_poses(const Check& check, const std::vector<Id>& drawn);

// Findings go to questions.json: each question by itself; size and kinds of the bank; poses.
void validate_questions(const Check& check);
void validate_bank(const Check& check);
void validate_question_poses(const Check& check, const std::vector<Id>& drawn);

// Sentence paths that a family needs, sorted: no more and no fewer may be in its text file.
[[nodiscard]] std::vector<std::string> needed_sentences(const Family& family, const Texts& texts);
[[nodiscard]] std::vector<std::string> needed_sentences(const Library& library);

// Poses that actions, questions and options name, sorted, each once.
[[nodiscard]] std::vector<Id> poses_used(const Family& family);

}  // namespace rehale::catalog
