// From a family's content to the numbers of the diagnosis: techniques to bits, questions to items.
// Must not know texts, runs or screens.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/mastery/evidence.h"

namespace rehale::check {

// What an order question tells apart: all its constraints that belong to one technique and betray
// the same misconception (which may be none) stand or fall together.
struct OrderMark {
  catalog::Id technique, misconception;
  std::vector<int> constraints;  // indexes into procedure::order_constraints
};

// Errors: those of procedure::order_constraints.
[[nodiscard]] Result<std::vector<OrderMark>> order_marks(const catalog::Family& family,
                                                         const catalog::Question& question);

// Item i is question i; bit k is technique k, then the misconceptions.
// Errors: those of mastery::make_model and the piece recipes, `where` naming the question.
[[nodiscard]] Result<mastery::Bank> make_bank(const catalog::Family& family);

// Index of a technique or misconception by id; -1 when the family has none of that name.
[[nodiscard]] int technique_index(const catalog::Family& family, const catalog::Id& id);
[[nodiscard]] int misconception_index(const catalog::Family& family, const catalog::Id& id);
[[nodiscard]] int question_index(const catalog::Family& family, const catalog::Id& id);

}  // namespace rehale::check
