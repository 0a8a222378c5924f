// Partial orders against outside marks: tests/reference/order/cases.txt, made by python3-networkx
// 2.8.8 (closure, all topological orders, bipartite matching) and enumeration; see make.py beside
// it.
#include "core/procedure/order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numeric>
#include <string>

#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale::procedure;
using rehale::support::read_file;
using rehale::support::source_path;

using Pairs = std::vector<std::pair<int, int>>;
using List = std::vector<int>;

PartialOrder made(int n, const Pairs& pairs) {
  auto order = PartialOrder::from_pairs(n, pairs);
  EXPECT_TRUE(order.has_value());
  return order.value_or(PartialOrder{});
}

int digit(char c) { return c <= '9' ? c - '0' : c - 'a' + 10; }

List list_of(const std::string& digits) {
  List list;
  for (const char c : digits) list.push_back(digit(c));
  return list;
}

// One line of cases.txt; -1 for "-".
struct Case {
  int n = 0;
  Pairs pairs;
  List list;
  int all = 0, given = 0, closure = 0, moves = 0, swaps = 0, orders = 0;
};

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts{""};
  for (const char c : text)
    if (c == at) parts.emplace_back();
    else parts.back() += c;
  return parts;
}

Case case_of(const std::string& line) {
  const auto part = split(line, ' ');
  const auto number = [&](std::size_t i) {
    return part[i] == "-" ? -1 : std::atoi(part[i].c_str());
  };
  Case c{number(0), {},        list_of(part[2]), number(3), number(4),
         number(5), number(6), number(7),        number(8)};
  if (part[1] != "-")
    for (const auto& pair : split(part[1], '.'))
      c.pairs.emplace_back(digit(pair[0]), digit(pair[1]));
  return c;
}

std::vector<std::string> case_lines() {
  auto lines = split(read_file(source_path("tests/reference/order/cases.txt")).value_or(""), '\n');
  std::erase(lines, "");
  return lines;
}

int broken_of(const Pairs& pairs, const List& list) {
  const auto place = [&](int item) { return std::find(list.begin(), list.end(), item); };
  return static_cast<int>(std::count_if(pairs.begin(), pairs.end(), [&](auto pair) {
    return place(pair.second) < place(pair.first);
  }));
}

// What a mending promises, checked from the outside: picking up the cards it names and nothing else
// leads from the list to a valid order, each card landing where it says.
void expect_mends(const PartialOrder& order, const List& list, const Mending& mending) {
  EXPECT_TRUE(is_permutation(mending.mended, order.size()));
  EXPECT_TRUE(is_valid(order, mending.mended));
  List staying = list, stayed = mending.mended;
  for (const auto& move : mending.moves) {
    EXPECT_EQ(list[static_cast<std::size_t>(move.from)], move.item);
    EXPECT_EQ(mending.mended[static_cast<std::size_t>(move.to)], move.item);
    std::erase(staying, move.item);
    std::erase(stayed, move.item);
  }
  EXPECT_EQ(staying, stayed);
}

TEST(PartialOrders, agree_with_networkx_on_over_a_thousand_random_cases) {
  const auto lines = case_lines();
  ASSERT_GE(lines.size(), 1000U);
  for (const auto& line : lines) {
    SCOPED_TRACE(line);
    const Case c = case_of(line);
    const auto order = made(c.n, c.pairs);
    EXPECT_EQ(order.pairs(), c.all);
    EXPECT_EQ(broken_of(c.pairs, c.list), c.given);
    EXPECT_EQ(static_cast<int>(violations(order, c.list).size()), c.closure);
    EXPECT_EQ(is_valid(order, c.list), c.closure == 0);
    const auto mending = mend(order, c.list);
    EXPECT_EQ(static_cast<int>(mending.moves.size()), c.moves);
    expect_mends(order, c.list, mending);
    if (c.swaps >= 0) {
      EXPECT_EQ(swap_distance(order, c.list), c.swaps);
    }
    if (c.orders >= 0) {
      EXPECT_EQ(count_valid_orders(order), static_cast<std::uint64_t>(c.orders));
    }
  }
}

// facts/diagnosis.md section 2, check table (n = 8, |P| = 24, e(P) = 8).
TEST(PartialOrders, give_the_published_check_table) {
  const Pairs given{{0, 1}, {1, 2}, {2, 4}, {3, 4}, {4, 5}, {5, 6}, {5, 7}};
  const auto order = made(8, given);
  EXPECT_EQ(order.pairs(), 24);
  EXPECT_EQ(count_valid_orders(order), 8U);
  EXPECT_NEAR(chance_level(order), .000198413, 5e-10);
  const auto covering = order.covering_pairs();
  EXPECT_EQ(covering, given);
  struct Row {
    const char* list;
    int given, closure;
    double tau;
    std::size_t moves;
    int swaps;
  };
  for (const Row& row : {Row{"01234567", 0, 0, 1, 0, 0}, Row{"30124576", 0, 0, 1, 0, 0},
                         Row{"02134567", 1, 1, .916667, 1, 1}, Row{"50123467", 1, 5, .583333, 1, 5},
                         Row{"76543210", 7, 24, -1, 6, 24}}) {
    SCOPED_TRACE(row.list);
    const auto list = list_of(row.list);
    EXPECT_EQ(broken_of(covering, list), row.given);
    EXPECT_EQ(violations(order, list).size(), static_cast<std::size_t>(row.closure));
    EXPECT_NEAR(tau_p(order, list), row.tau, 5e-7);
    EXPECT_EQ(mend(order, list).moves.size(), row.moves);
    EXPECT_EQ(swap_distance(order, list), row.swaps);
  }
  const Move five_back{5, 0, 5};
  EXPECT_EQ(mend(order, list_of("50123467")).moves, std::vector<Move>{five_back});
}

// facts/diagnosis.md section 9: scipy.stats.kendalltau([1..6], [2,1,4,3,6,5]) = 0.6; for a total
// order tau_P is that tau.
TEST(PartialOrders, tau_of_a_total_order_is_kendalls) {
  const auto order = made(6, {{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 5}});
  EXPECT_NEAR(tau_p(order, list_of("103254")), .6, 1e-12);
}

// A total order: moves = n - longest increasing subsequence (diagnosis.md section 2).
TEST(PartialOrders, moves_of_a_total_order_are_what_is_not_in_the_longest_increasing_part) {
  const auto order = made(6, {{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 5}});
  EXPECT_EQ(mend(order, list_of("512340")).moves.size(), 2U);
  EXPECT_EQ(mend(order, list_of("345012")).moves.size(), 3U);
}

TEST(PartialOrders, name_a_cycle) {
  const Pairs pairs{{0, 1}, {4, 2}, {1, 3}, {2, 5}, {5, 4}, {3, 5}};
  const auto order = PartialOrder::from_pairs(6, pairs);
  ASSERT_FALSE(order.has_value());
  EXPECT_EQ(order.error().code, "order-cycle");
  auto cycle = find_cycle(6, pairs);
  std::rotate(cycle.begin(), std::find(cycle.begin(), cycle.end(), 2), cycle.end());
  EXPECT_EQ(cycle, (List{2, 5, 4}));
  EXPECT_EQ(find_cycle(2, Pairs{{1, 1}}), List{1});
  EXPECT_TRUE(find_cycle(3, Pairs{{0, 1}, {0, 2}, {1, 2}}).empty());
}

TEST(PartialOrders, refuse_items_that_are_not_there) {
  for (const auto& [n, pair] :
       {std::pair{2, std::pair{0, 2}}, {2, {-1, 0}}, {33, {0, 1}}, {-1, {0, 1}}}) {
    const auto order = PartialOrder::from_pairs(n, Pairs{pair});
    ASSERT_FALSE(order.has_value());
    EXPECT_EQ(order.error().code, "order-size");
  }
  EXPECT_EQ(made(0, {}).pairs(), 0);
  EXPECT_EQ(made(32, {{0, 31}, {31, 1}}).pairs(), 3);
}

TEST(PartialOrders, keep_what_follows_through_items_left_out) {
  const auto order = made(5, {{0, 4}, {4, 2}, {1, 2}});
  const auto part = order.restricted(List{2, 0, 1});
  EXPECT_EQ(part.pairs(), 2);
  EXPECT_TRUE(part.before(1, 0));  // 0 before 2, through 4
  EXPECT_TRUE(part.before(2, 0));  // 1 before 2
  EXPECT_EQ(part.after(1), 1U);
}

TEST(PartialOrders, know_permutations) {
  EXPECT_TRUE(is_permutation(List{2, 0, 1}, 3));
  EXPECT_TRUE(is_permutation(List{}, 0));
  for (const List& list :
       {List{0, 1}, List{0, 0, 1}, List{0, 1, 3}, List{0, 1, -1}, List{0, 1, 2, 2}})
    EXPECT_FALSE(is_permutation(list, 3));
}

// Worked by hand: a < b, c < b, c < d and the list b d a c. Two cards must go; keeping a, d would
// give c d a b (5 swaps away), keeping b, d gives a c b d (4).
TEST(PartialOrders, mend_to_the_nearest_of_several_smallest_ways) {
  const int a = 3, b = 1, c = 0, d = 2;
  const auto order = made(4, {{a, b}, {c, b}, {c, d}});
  const auto mending = mend(order, List{b, d, a, c});
  EXPECT_EQ(mending.moves.size(), 2U);
  EXPECT_EQ(mending.mended, (List{a, c, b, d}));
}

TEST(PartialOrders, count_up_to_twelve_items) {
  EXPECT_EQ(count_valid_orders(made(12, {})), 479001600U);  // 12!
  EXPECT_EQ(chance_level(made(12, {})), 1);
  List backwards(12);
  std::iota(backwards.rbegin(), backwards.rend(), 0);
  Pairs chain;
  for (int i = 0; i < 11; ++i) chain.emplace_back(i, i + 1);
  EXPECT_EQ(mend(made(12, chain), backwards).moves.size(), 11U);
  EXPECT_EQ(swap_distance(made(12, chain), backwards), 66);  // all 12·11/2 pairs
}

}  // namespace
