// Partial orders on few items as bit rows: closure, what a proposed order breaks, the fewest moves
// that mend it. Pure combinatorics (facts/diagnosis.md section 2); must not know families or
// questions.
#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "core/base/result.h"

namespace rehale::procedure {

using Items = std::uint32_t;  // a set of items, bit i = item i

inline constexpr int k_max_items = 32;
inline constexpr int k_max_cards = 12;  // for what takes 2^n steps: moves, swaps, counting

// A strict order, transitively closed. Items are 0…size()-1.
class PartialOrder {
 public:
  // pairs (a, b): a must come before b. Errors: "order-size" (n not 0…32 or an item out of range),
  // "order-cycle" (find_cycle tells which).
  [[nodiscard]] static Result<PartialOrder> from_pairs(int n,
                                                       std::span<const std::pair<int, int>> pairs);

  [[nodiscard]] int size() const { return static_cast<int>(after_.size()); }
  [[nodiscard]] bool before(int a, int b) const { return (after_[at(a)] >> b & 1U) != 0; }
  [[nodiscard]] Items after(int a) const {
    return after_[at(a)];
  }                                 // all that must come later than a
  [[nodiscard]] int pairs() const;  // |P|

  // The order among `items` (distinct), item k of the result being items[k].
  [[nodiscard]] PartialOrder restricted(std::span<const int> items) const;
  // a before b with nothing between: the fewest pairs whose closure this is.
  [[nodiscard]] std::vector<std::pair<int, int>> covering_pairs() const;

 private:
  [[nodiscard]] static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  std::vector<Items> after_;
};

// The items of one cycle of the pairs, each before the next and the last before the first; empty
// when there is none. Items are 0…n-1, n <= k_max_items.
[[nodiscard]] std::vector<int> find_cycle(int n, std::span<const std::pair<int, int>> pairs);

// In all below: `list` is a permutation of the items of `order` (unchecked: callers do
// is_permutation).
[[nodiscard]] bool is_permutation(std::span<const int> list, int n);

// Pairs (a, b) of the order with b ahead of a in the list.
[[nodiscard]] std::vector<std::pair<int, int>> violations(const PartialOrder& order,
                                                          std::span<const int> list);
[[nodiscard]] bool is_valid(const PartialOrder& order, std::span<const int> list);
// 1 - 2|V|/|P|, in [-1, 1]; 1 when the order has no pairs.
[[nodiscard]] double tau_p(const PartialOrder& order, std::span<const int> list);

// One card picked up and put elsewhere.
struct Move {
  int item = 0, from = 0, to = 0;  // places in the list given and in the mended list
  bool operator==(const Move&) const = default;
};

struct Mending {
  std::vector<Move> moves;  // the fewest; n - the longest part of the list that breaks nothing
  std::vector<int> mended;  // breaks nothing; all other items keep their order among each other
};

// Where several sets of items could stay, the one whose mended order is nearest to the list in
// adjacent swaps. n <= k_max_cards.
[[nodiscard]] Mending mend(const PartialOrder& order, std::span<const int> list);

// Fewest swaps of neighbours to any valid order. n <= k_max_cards.
[[nodiscard]] int swap_distance(const PartialOrder& order, std::span<const int> list);
// Number of valid orders, e(P), and the chance of a random one to be valid, e(P)/n!. n <=
// k_max_cards.
[[nodiscard]] std::uint64_t count_valid_orders(const PartialOrder& order);
[[nodiscard]] double chance_level(const PartialOrder& order);

}  // namespace rehale::procedure
