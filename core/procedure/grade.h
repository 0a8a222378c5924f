// Marks an order question against the order rules of its family. Every order that breaks none is
// right. Must not know how sure we are of anything: that is core/mastery.
#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/procedure/order.h"

namespace rehale::procedure {

// Why one card must come before another: a rule of the family, or a chain of rules through actions
// that are not among the cards.
struct Constraint {
  int before = 0, after = 0;  // cards: index into question.actions
  std::vector<catalog::Id>
      rules;                  // the shortest chain from before to after; one when stated directly
  catalog::Id technique;      // of the first rule of the chain
  catalog::Id misconception;  // of the first rule of the chain; may be empty
};

// What an order question asks: every rule with both actions among the cards, in the order of the
// rules, then every remaining covering pair of the closed order. Always the same list for the same
// content, so a constraint's index can be stored. Errors: "order-cycle", "unknown-action".
[[nodiscard]] Result<std::vector<Constraint>> order_constraints(const catalog::Family& family,
                                                                const catalog::Question& question);

// The closed order of all rules of the family, restricted to the cards. Errors as above.
[[nodiscard]] Result<PartialOrder> card_order(const catalog::Family& family,
                                              const catalog::Question& question);

struct OrderGrade {
  struct Mark {
    Constraint constraint;
    bool kept = false;
  };
  struct OfTechnique {
    catalog::Id technique;
    int kept = 0, broken = 0;
  };
  bool right = false;
  std::vector<Mark> marks;                // as order_constraints
  std::vector<OfTechnique> by_technique;  // in the order they first occur in marks
  double tau = 1;                         // 1 - 2|V|/|P| over the closed order
  struct Step {
    catalog::Id action;
    int from = 0, to = 0;  // places in the answer and in `mended`
  };
  std::vector<Step> moves;  // the fewest cards to pick up, and where to put them
  std::vector<catalog::Id> mended;
};

// answer: the question's actions in the order given. Errors: "not-an-order" (the question is of
// another kind), "not-these-cards" (answer is no permutation of the cards), and as
// order_constraints.
[[nodiscard]] Result<OrderGrade> grade_order(const catalog::Family& family,
                                             const catalog::Question& question,
                                             std::span<const catalog::Id> answer);

}  // namespace rehale::procedure
