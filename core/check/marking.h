// What one answer shows: the columns of evidence for the diagnosis, and what it betrays, by id.
// Must not know earlier answers or how sure the diagnosis is.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/check/events.h"

namespace rehale::check {

// One part of an answer that was as wanted or not.
struct Mark {
  Id part;  // option, band or (order) rule id
  bool met = false;
  Id technique;      // that it speaks about
  Id misconception;  // betrayed by it; empty when met
};

struct Marking {
  bool unsure = false;
  bool right = false;        // everything met
  std::vector<Mark> marks;   // empty when unsure
  std::vector<int> columns;  // for mastery: one a piece, -1 where a piece says nothing
  int moves_to_mend = 0;     // order: the fewest cards to pick up
  std::vector<Id> mended;    // order: a right order nearest to the answer
};

// Errors: "answer-shape" (a choice that is no option, twice the same, cards missing, an amount
// outside the question's range): `where` names the question.
[[nodiscard]] Result<Marking> mark_answer(const catalog::Family& family,
                                          const catalog::Question& question, const Answer& answer);

// The right answer itself, to be shown after a practice question.
[[nodiscard]] Answer right_answer(const catalog::Family& family, const catalog::Question& question);

}  // namespace rehale::check
