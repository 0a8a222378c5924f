// From a family's content to the numbers of the diagnosis: techniques to bits, questions to items.
// Must not know texts, runs or screens.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/mastery/evidence.h"

namespace rehale::check {

// Which pair of cards stands for which technique in an order question: one mark a technique.
struct OrderMark {
  catalog::Id technique;
  catalog::Id misconception;  // betrayed when any of its constraints breaks; may be empty
};

// The marks of an order question, in the order of the family's techniques.
[[nodiscard]] std::vector<OrderMark> order_marks(const catalog::Family& family,
                                                 const catalog::Question& question);

// Item i is question i; bit k is technique k, then the misconceptions.
// Errors: those of mastery::make_model and the piece recipes, `where` naming the question.
[[nodiscard]] Result<mastery::Bank> make_bank(const catalog::Family& family);

// Index of a technique or misconception by id; -1 when the family has none of that name.
[[nodiscard]] int technique_index(const catalog::Family& family, const catalog::Id& id);
[[nodiscard]] int misconception_index(const catalog::Family& family, const catalog::Id& id);
[[nodiscard]] int question_index(const catalog::Family& family, const catalog::Id& id);

}  // namespace rehale::check
