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

// Rules with their actions as indices, and the order they make.
struct Rules {
  std::vector<std::pair<int, int>> pairs;  // as family.rules
  PartialOrder order;
};

Result<Rules> close_rules(const Family& family) {
  Rules rules;
  for (const auto& rule : family.rules) {
    const int before = catalog::index_of(family.actions, rule.before);
    const int after = catalog::index_of(family.actions, rule.after);
    if (before < 0 || after < 0)
      return fail("unknown-action", rule.id, rule.before + ", " + rule.after);
    rules.pairs.emplace_back(before, after);
  }
  auto order = PartialOrder::from_pairs(static_cast<int>(family.actions.size()), rules.pairs);
  if (!order) return tl::unexpected(order.error());
  rules.order = std::move(*order);
  return rules;
}

Result<std::vector<int>> cards_of(const Family& family, const Question& question) {
  std::vector<int> cards;
  for (const auto& id : question.actions) {
    cards.push_back(catalog::index_of(family.actions, id));
    if (cards.back() < 0) return fail("unknown-action", question.id, id);
  }
  if (question.kind != catalog::Kind::order || cards.size() > at(k_max_cards))
    return fail("not-an-order", question.id, "an order question has 1 to 12 cards");
  return cards;
}

// The fewest rules that lead from one action to another; of equally many the first by their list.
// There is a way: the closed order has the pair.
std::vector<int> shortest_chain(const Rules& rules, int from, int to) {
  std::vector<int> rule_into(at(rules.order.size()), -1);
  std::vector<int> queue{from};
  for (std::size_t head = 0; head < queue.size(); ++head) {
    for (std::size_t r = 0; r < rules.pairs.size(); ++r) {
      const auto [before, after] = rules.pairs[r];
      if (before != queue[head] || rule_into[at(after)] >= 0) continue;
      rule_into[at(after)] = static_cast<int>(r);
      queue.push_back(after);
    }
  }
  std::vector<int> chain;
  for (int action = to; action != from; action = rules.pairs[at(chain.back())].first)
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

std::vector<Constraint> constraints_among(const Family& family, const Rules& rules,
                                          const std::vector<int>& cards) {
  std::vector<Constraint> constraints;
  const auto card_of = [&](int action) {
    const auto found = std::find(cards.begin(), cards.end(), action);
    return found == cards.end() ? -1 : static_cast<int>(found - cards.begin());
  };
  for (std::size_t r = 0; r < rules.pairs.size(); ++r) {
    const int before = card_of(rules.pairs[r].first), after = card_of(rules.pairs[r].second);
    if (before >= 0 && after >= 0)
      constraints.push_back(made_of(family, {static_cast<int>(r)}, before, after));
  }
  for (const auto& [a, b] : rules.order.restricted(cards).covering_pairs()) {
    const auto chain = shortest_chain(rules, cards[at(a)], cards[at(b)]);
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
  const auto rules = close_rules(family);
  if (!rules) return tl::unexpected(rules.error());
  const auto cards = cards_of(family, question);
  if (!cards) return tl::unexpected(cards.error());
  return rules->order.restricted(*cards);
}

Result<std::vector<Constraint>> order_constraints(const Family& family, const Question& question) {
  const auto rules = close_rules(family);
  if (!rules) return tl::unexpected(rules.error());
  const auto cards = cards_of(family, question);
  if (!cards) return tl::unexpected(cards.error());
  return constraints_among(family, *rules, *cards);
}

Result<OrderGrade> grade_order(const Family& family, const Question& question,
                               std::span<const Id> answer) {
  const auto order = card_order(family, question);
  if (!order) return tl::unexpected(order.error());
  auto constraints = order_constraints(family, question);
  if (!constraints) return tl::unexpected(constraints.error());
  std::vector<int> list;
  for (const auto& id : answer) list.push_back(catalog::index_of(question.actions, id));
  if (!is_permutation(list, order->size()))
    return fail("not-these-cards", question.id, "give each card of the question once");

  OrderGrade grade;
  std::vector<int> place(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) place[at(list[i])] = static_cast<int>(i);
  for (auto& constraint : *constraints) {
    const bool kept = place[at(constraint.before)] < place[at(constraint.after)];
    grade.marks.push_back({std::move(constraint), kept});
    count_mark(grade, grade.marks.back());
  }
  grade.right = is_valid(*order, list);
  grade.tau = tau_p(*order, list);
  const auto mending = mend(*order, list);
  for (const auto& move : mending.moves)
    grade.moves.push_back({question.actions[at(move.item)], move.from, move.to});
  for (const int card : mending.mended) grade.mended.push_back(question.actions[at(card)]);
  return grade;
}

}  // namespace rehale::procedure
