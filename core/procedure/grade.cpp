#include "core/procedure/grade.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/catalog/lookup.h"

namespace rehale::procedure {
namespace {

using catalog::Family;
using catalog::Id;
using catalog::OrderRule;
using catalog::Question;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// Rules with their actions as indices, the order they make, and the cards of a question.
struct Asked {
  std::vector<std::pair<int, int>> rules;  // as family.rules
  PartialOrder order;                      // of all actions
  std::vector<int> cards;                  // actions, as question.actions
};

Result<Asked> asked_by(const Family& family, const Question& question) {
  Asked asked;
  for (const auto& rule : family.rules) {
    asked.rules.emplace_back(catalog::index_of(family.actions, rule.before),
                             catalog::index_of(family.actions, rule.after));
    if (asked.rules.back().first < 0 || asked.rules.back().second < 0)
      return fail("unknown-action", rule.id, rule.before + ", " + rule.after);
  }
  for (const auto& id : question.actions) {
    asked.cards.push_back(catalog::index_of(family.actions, id));
    if (asked.cards.back() < 0) return fail("unknown-action", question.id, id);
  }
  if (question.kind != catalog::Kind::order || asked.cards.size() > at(k_max_cards))
    return fail("not-an-order", question.id, "an order question has at most 12 cards");
  auto order = PartialOrder::from_pairs(static_cast<int>(family.actions.size()), asked.rules);
  if (!order) return tl::unexpected(order.error());
  asked.order = std::move(*order);
  return asked;
}

// The fewest rules that lead from one action to another; of equally many the first by their list.
// There is a way: the closed order has the pair.
std::vector<int> shortest_chain(const Asked& asked, int from, int to) {
  std::vector<int> rule_into(at(asked.order.size()), -1);
  std::vector<int> queue{from};
  for (std::size_t head = 0; head < queue.size(); ++head) {
    for (std::size_t r = 0; r < asked.rules.size(); ++r) {
      const auto [before, after] = asked.rules[r];
      if (before != queue[head] || rule_into[at(after)] >= 0) continue;
      rule_into[at(after)] = static_cast<int>(r);
      queue.push_back(after);
    }
  }
  std::vector<int> chain;
  for (int action = to; action != from; action = asked.rules[at(chain.back())].first)
    chain.push_back(rule_into[at(action)]);
  std::reverse(chain.begin(), chain.end());
  return chain;
}

Constraint made_of(const Family& family, const std::vector<int>& chain, int before, int after) {
  const auto& first = family.rules[at(chain.front())];
  Constraint constraint{before, after, {}, first.technique, first.misconception};
  for (const int rule : chain) constraint.rules.push_back(family.rules[at(rule)].id);
  return constraint;
}

std::vector<Constraint> constraints_among(const Family& family, const Asked& asked) {
  std::vector<Constraint> constraints;
  const auto card_of = [&](int action) {
    const auto found = std::find(asked.cards.begin(), asked.cards.end(), action);
    return found == asked.cards.end() ? -1 : static_cast<int>(found - asked.cards.begin());
  };
  for (std::size_t r = 0; r < asked.rules.size(); ++r) {
    const int before = card_of(asked.rules[r].first), after = card_of(asked.rules[r].second);
    if (before >= 0 && after >= 0)
      constraints.push_back(made_of(family, {static_cast<int>(r)}, before, after));
  }
  for (const auto& [a, b] : asked.order.restricted(asked.cards).covering_pairs()) {
    const auto chain = shortest_chain(asked, asked.cards[at(a)], asked.cards[at(b)]);
    if (chain.size() > 1) constraints.push_back(made_of(family, chain, a, b));
  }
  return constraints;
}

void count_mark(OrderGrade& grade, const OrderGrade::Mark& mark) {
  auto& all = grade.by_technique;
  auto of_it = std::find_if(all.begin(), all.end(), [&](const OrderGrade::OfTechnique& t) {
    return t.technique == mark.constraint.technique;
  });
  if (of_it == all.end()) of_it = all.insert(all.end(), {mark.constraint.technique, 0, 0});
  ++(mark.kept ? of_it->kept : of_it->broken);
}

}  // namespace

Result<PartialOrder> card_order(const Family& family, const Question& question) {
  return asked_by(family, question).map([](const Asked& asked) {
    return asked.order.restricted(asked.cards);
  });
}

Result<std::vector<Constraint>> order_constraints(const Family& family, const Question& question) {
  return asked_by(family, question).map([&](const Asked& asked) {
    return constraints_among(family, asked);
  });
}

Result<OrderGrade> grade_order(const Family& family, const Question& question,
                               std::span<const Id> answer) {
  const auto asked = asked_by(family, question);
  if (!asked) return tl::unexpected(asked.error());
  const auto order = asked->order.restricted(asked->cards);
  std::vector<int> list;
  for (const auto& id : answer) list.push_back(catalog::index_of(question.actions, id));
  if (!is_permutation(list, order.size()))
    return fail("not-these-cards", question.id, "give each card of the question once");

  OrderGrade grade;
  std::vector<int> place(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) place[at(list[i])] = static_cast<int>(i);
  for (auto& constraint : constraints_among(family, *asked)) {
    const bool kept = place[at(constraint.before)] < place[at(constraint.after)];
    grade.marks.push_back({std::move(constraint), kept});
    count_mark(grade, grade.marks.back());
  }
  grade.right = is_valid(order, list);
  grade.tau = tau_p(order, list);
  const auto mending = mend(order, list);
  for (const auto& move : mending.moves)
    grade.moves.push_back({question.actions[at(move.item)], move.from, move.to});
  for (const int card : mending.mended) grade.mended.push_back(question.actions[at(card)]);
  return grade;
}

}  // namespace rehale::procedure
