// Order questions: which rules an order breaks, whose they are, and the fewest moves that mend it.
// The mathematics is checked in order_test.cpp; here, that a family's rules reach it whole.
#include "core/procedure/grade.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "core/catalog/lookup.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using catalog::Id;
using procedure::OrderGrade;

using Ids = std::vector<Id>;

const catalog::Family& pipe() {
  static const catalog::Family family = support::ok_family();
  return family;
}

const catalog::Question& in_order() { return *catalog::find(pipe().questions, "in-order"); }

OrderGrade graded(const Ids& answer) {
  const auto grade = procedure::grade_order(pipe(), in_order(), answer);
  EXPECT_TRUE(grade.has_value());
  return grade.value_or(OrderGrade{});
}

// "load-first+hold-after of load-once" for each broken constraint.
std::vector<std::string> broken(const OrderGrade& grade) {
  std::vector<std::string> all;
  for (const auto& mark : grade.marks) {
    if (mark.kept) continue;
    std::string rules;
    for (const auto& id : mark.constraint.rules) rules += (rules.empty() ? "" : "+") + id;
    all.push_back(rules + " of " + mark.constraint.technique);
  }
  return all;
}

using Told = std::vector<std::string>;

TEST(OrderGrading, asks_direct_rules_first_and_then_chains_through_missing_cards) {
  const auto constraints = procedure::order_constraints(pipe(), in_order());
  ASSERT_TRUE(constraints.has_value());
  std::vector<std::string> told;
  for (const auto& c : *constraints) {
    std::string rules;
    for (const auto& id : c.rules) rules += ' ' + id;
    told.push_back(in_order().actions[static_cast<std::size_t>(c.before)] + " < " +
                   in_order().actions[static_cast<std::size_t>(c.after)] + ':' + rules + ", " +
                   c.technique);
  }
  EXPECT_EQ(told, (Told{"open-lid < load: open-first, open-lid",
                        "load < breathe-in: load-first, load-once",
                        "breathe-in < hold-breath: hold-after, hold-breath",
                        "blow-out < breathe-in: blow-first seal-first, blow-out-first"}));
}

TEST(OrderGrading, every_order_that_breaks_nothing_is_right_and_no_other) {
  Ids answer = in_order().actions;
  std::sort(answer.begin(), answer.end());
  int right = 0, all = 0;
  do {
    const auto place = [&](const char* id) { return std::find(answer.begin(), answer.end(), id); };
    const bool expected =
        place("open-lid") < place("load") && place("load") < place("breathe-in") &&
        place("blow-out") < place("breathe-in") && place("breathe-in") < place("hold-breath");
    const auto grade = graded(answer);
    EXPECT_EQ(grade.right, expected);
    EXPECT_EQ(broken(grade).empty(), expected);
    EXPECT_EQ(grade.moves.empty(), expected);
    EXPECT_TRUE(graded(grade.mended).right);
    right += grade.right ? 1 : 0;
    ++all;
  } while (std::next_permutation(answer.begin(), answer.end()));
  EXPECT_EQ(all, 120);
  EXPECT_EQ(right, 3);  // blow-out anywhere before breathe-in
}

TEST(OrderGrading, names_rule_technique_and_misconception_of_what_is_broken) {
  const auto grade = graded({"open-lid", "blow-out", "breathe-in", "load", "hold-breath"});
  EXPECT_EQ(broken(grade), Told{"load-first of load-once"});
  EXPECT_EQ(grade.marks[1].constraint.misconception, "loads-twice");
  ASSERT_EQ(grade.moves.size(), 1U);
  EXPECT_EQ(grade.mended, (Ids{"open-lid", "blow-out", "load", "breathe-in", "hold-breath"}));
}

TEST(OrderGrading, one_card_far_out_is_one_move_though_it_breaks_much) {
  const auto grade = graded({"hold-breath", "open-lid", "load", "blow-out", "breathe-in"});
  EXPECT_EQ(broken(grade), Told{"hold-after of hold-breath"});
  ASSERT_EQ(grade.moves.size(), 1U);
  EXPECT_EQ(grade.moves[0].action, "hold-breath");
  EXPECT_EQ(grade.moves[0].from, 0);
  EXPECT_EQ(grade.moves[0].to, 4);
  EXPECT_NEAR(grade.tau, 1 - 2 * 4. / 8, 1e-12);  // 4 of the closure's 8 pairs
}

TEST(OrderGrading, counts_kept_and_broken_for_each_technique) {
  const auto grade = graded({"breathe-in", "open-lid", "load", "blow-out", "hold-breath"});
  std::vector<std::string> told;
  for (const auto& t : grade.by_technique)
    told.push_back(t.technique + ' ' + std::to_string(t.kept) + ' ' + std::to_string(t.broken));
  EXPECT_EQ(told, (Told{"open-lid 1 0", "load-once 0 1", "hold-breath 1 0", "blow-out-first 0 1"}));
}

TEST(OrderGrading, takes_only_the_cards_each_once) {
  for (const Ids& answer :
       {Ids{}, Ids{"open-lid"}, Ids{"open-lid", "load", "blow-out", "breathe-in", "breathe-in"},
        Ids{"open-lid", "load", "blow-out", "breathe-in", "close-lid"},
        Ids{"open-lid", "load", "blow-out", "breathe-in", "hold-breath", "hold-breath"}}) {
    const auto grade = procedure::grade_order(pipe(), in_order(), answer);
    ASSERT_FALSE(grade.has_value());
    EXPECT_EQ(grade.error().code, "not-these-cards");
  }
}

TEST(OrderGrading, grades_orders_only) {
  const auto grade = procedure::grade_order(pipe(), pipe().questions.front(), Ids{});
  ASSERT_FALSE(grade.has_value());
  EXPECT_EQ(grade.error().code, "not-an-order");
}

// a < x < b and a < y < z < b with x, y, z not among the cards: the short way counts, whose first
// rule is t1.
TEST(OrderGrading, a_pair_through_missing_cards_is_laid_to_the_first_rule_of_the_shortest_way) {
  catalog::Family family;
  for (const char* id : {"a", "b", "x", "y", "z"}) family.actions.push_back({id, {}, {}, {}});
  const auto rule = [&](const char* id, const char* before, const char* after,
                        const char* technique) {
    family.rules.push_back({id, before, after, technique, {}, {}});
  };
  rule("r1", "a", "y", "t3");
  rule("r2", "y", "z", "t3");
  rule("r3", "z", "b", "t3");
  rule("r4", "a", "x", "t1");
  rule("r5", "x", "b", "t2");
  catalog::Question question;
  question.kind = catalog::Kind::order;
  question.actions = {"b", "a"};
  const auto constraints = procedure::order_constraints(family, question);
  ASSERT_TRUE(constraints.has_value());
  ASSERT_EQ(constraints->size(), 1U);
  EXPECT_EQ(constraints->front().before, 1);
  EXPECT_EQ(constraints->front().after, 0);
  EXPECT_EQ(constraints->front().rules, (Ids{"r4", "r5"}));
  EXPECT_EQ(constraints->front().technique, "t1");
}

}  // namespace
