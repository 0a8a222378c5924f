#include "core/procedure/order.h"

#include <algorithm>
#include <bit>
#include <numeric>
#include <string>

namespace rehale::procedure {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }
Items only(int i) { return Items{1} << i; }
bool has(Items set, int i) { return (set >> i & 1U) != 0; }

// For each item, those that must come earlier.
std::vector<Items> earlier_of(const PartialOrder& order) {
  std::vector<Items> earlier(at(order.size()));
  for (int a = 0; a < order.size(); ++a) {
    for (int b = 0; b < order.size(); ++b)
      if (order.before(a, b)) earlier[at(b)] |= only(a);
  }
  return earlier;
}

std::vector<int> places_of(std::span<const int> list) {
  std::vector<int> places(list.size());
  for (std::size_t place = 0; place < list.size(); ++place)
    places[at(list[place])] = static_cast<int>(place);
  return places;
}

// The valid order that keeps `kept` as they stand in the list and otherwise takes what may come
// next in the order of the list. `kept` breaks nothing among itself, so there always is a next one:
// the order stays free of cycles when the chain of `kept` is added.
std::vector<int> reinsert(const std::vector<Items>& earlier, std::span<const int> list,
                          Items kept) {
  std::vector<int> result;
  Items done = 0;
  while (result.size() < list.size()) {
    bool kept_waits = false;  // a kept one ahead in the list is not out yet
    for (const int item : list) {
      if (has(done, item)) continue;
      const bool free = (earlier[at(item)] & ~done) == 0 && !(has(kept, item) && kept_waits);
      if (free) {
        result.push_back(item);
        done |= only(item);
        break;
      }
      kept_waits = kept_waits || has(kept, item);
    }
  }
  return result;
}

int swaps_between(std::span<const int> list, std::span<const int> other) {
  const auto place = places_of(other);
  int swaps = 0;
  for (std::size_t i = 0; i < list.size(); ++i) {
    for (std::size_t k = i + 1; k < list.size(); ++k)
      if (place[at(list[i])] > place[at(list[k])]) ++swaps;
  }
  return swaps;
}

}  // namespace

Result<PartialOrder> PartialOrder::from_pairs(int n, std::span<const std::pair<int, int>> pairs) {
  if (n < 0 || n > k_max_items) return fail("order-size", std::to_string(n), "0 to 32 items");
  PartialOrder order;
  order.after_.resize(at(n));
  for (const auto& [a, b] : pairs) {
    if (a < 0 || b < 0 || a >= n || b >= n)
      return fail("order-size", std::to_string(a) + " " + std::to_string(b), "no such item");
    order.after_[at(a)] |= only(b);
  }
  for (int via = 0; via < n; ++via) {
    for (int a = 0; a < n; ++a)
      if (order.before(a, via)) order.after_[at(a)] |= order.after_[at(via)];
  }
  for (int a = 0; a < n; ++a) {
    if (order.before(a, a))
      return fail("order-cycle", std::to_string(a), "would have to come before itself");
  }
  return order;
}

std::vector<int> find_cycle(int n, std::span<const std::pair<int, int>> pairs) {
  for (int first = 0; first < n; ++first) {
    std::vector<int> came_from(at(n), -1);
    std::vector<int> queue{first};
    for (std::size_t head = 0; head < queue.size(); ++head) {
      for (const auto& [a, b] : pairs) {
        if (a != queue[head] || came_from[at(b)] >= 0) continue;
        came_from[at(b)] = a;
        queue.push_back(b);
      }
    }
    if (came_from[at(first)] < 0) continue;
    std::vector<int> cycle{first};
    for (int item = came_from[at(first)]; item != first; item = came_from[at(item)])
      cycle.push_back(item);
    std::reverse(cycle.begin() + 1, cycle.end());
    return cycle;
  }
  return {};
}

int PartialOrder::pairs() const {
  return std::accumulate(after_.begin(), after_.end(), 0,
                         [](int sum, Items row) { return sum + std::popcount(row); });
}

PartialOrder PartialOrder::restricted(std::span<const int> items) const {
  PartialOrder order;
  order.after_.resize(items.size());
  for (std::size_t a = 0; a < items.size(); ++a) {
    for (std::size_t b = 0; b < items.size(); ++b)
      if (before(items[a], items[b])) order.after_[a] |= Items{1} << b;
  }
  return order;
}

std::vector<std::pair<int, int>> PartialOrder::covering_pairs() const {
  const auto earlier = earlier_of(*this);
  std::vector<std::pair<int, int>> pairs;
  for (int a = 0; a < size(); ++a) {
    for (int b = 0; b < size(); ++b)
      if (before(a, b) && (after(a) & earlier[at(b)]) == 0) pairs.emplace_back(a, b);
  }
  return pairs;
}

bool is_permutation(std::span<const int> list, int n) {
  if (n < 0 || list.size() != static_cast<std::size_t>(n) || n > k_max_items) return false;
  Items seen = 0;
  for (const int item : list) {
    if (item < 0 || item >= n || has(seen, item)) return false;
    seen |= only(item);
  }
  return true;
}

std::vector<std::pair<int, int>> violations(const PartialOrder& order, std::span<const int> list) {
  const auto place = places_of(list);
  std::vector<std::pair<int, int>> broken;
  for (int a = 0; a < order.size(); ++a) {
    for (int b = 0; b < order.size(); ++b)
      if (order.before(a, b) && place[at(b)] < place[at(a)]) broken.emplace_back(a, b);
  }
  return broken;
}

bool is_valid(const PartialOrder& order, std::span<const int> list) {
  return violations(order, list).empty();
}

double tau_p(const PartialOrder& order, std::span<const int> list) {
  const int pairs = order.pairs();
  if (pairs == 0) return 1;
  return 1 - 2 * static_cast<double>(violations(order, list).size()) / pairs;
}

// The broken pairs are a strict order themselves, and what may stay is a set with no broken pair in
// it: its largest antichain (as many as n less a maximum matching of the broken pairs, by Dilworth
// and König; the tests compare with that). n <= 12, so all sets are looked at, for the nearest
// mending too.
Mending mend(const PartialOrder& order, std::span<const int> list) {
  const int n = order.size();
  std::vector<Items> clash(at(n));  // items that cannot stay when this one does
  for (const auto& [a, b] : violations(order, list)) clash[at(a)] |= only(b);
  const auto may_stay = [&](Items set) {
    for (int i = 0; i < n; ++i)
      if (has(set, i) && (clash[at(i)] & set) != 0) return false;
    return true;
  };

  const auto earlier = earlier_of(order);
  Mending best;
  Items best_kept = 0;
  int best_swaps = 0;
  for (Items kept = only(n); kept-- > 0;) {
    if (std::popcount(kept) < std::popcount(best_kept) || !may_stay(kept)) continue;
    auto mended = reinsert(earlier, list, kept);
    const int swaps = swaps_between(list, mended);
    if (std::popcount(kept) == std::popcount(best_kept) && !best.mended.empty() &&
        swaps >= best_swaps)
      continue;
    best.mended = std::move(mended);
    best_kept = kept;
    best_swaps = swaps;
  }
  const auto place = places_of(best.mended);
  for (int from = 0; from < n; ++from) {
    if (const int item = list[at(from)]; !has(best_kept, item))
      best.moves.push_back({item, from, place[at(item)]});
  }
  return best;
}

// Over all sets I that a valid order can start with: D[I + x] = D[I] + those still out that stand
// ahead of x in the list.
int swap_distance(const PartialOrder& order, std::span<const int> list) {
  constexpr int k_unreached = 1 << 20;
  const int n = order.size();
  const auto earlier = earlier_of(order);
  const auto place = places_of(list);
  std::vector<int> fewest(std::size_t{1} << n, k_unreached);
  fewest[0] = 0;
  for (Items done = 0; done + 1 < fewest.size(); ++done) {
    if (fewest[done] == k_unreached) continue;
    for (int x = 0; x < n; ++x) {
      if (has(done, x) || (earlier[at(x)] & ~done) != 0) continue;
      int ahead = 0;
      for (int y = 0; y < n; ++y) ahead += !has(done, y) && place[at(y)] < place[at(x)] ? 1 : 0;
      auto& reached = fewest[done | only(x)];
      reached = std::min(reached, fewest[done] + ahead);
    }
  }
  return fewest.back();
}

std::uint64_t count_valid_orders(const PartialOrder& order) {
  const auto earlier = earlier_of(order);
  std::vector<std::uint64_t> ways(std::size_t{1} << order.size());
  ways[0] = 1;
  for (Items done = 0; done + 1 < ways.size(); ++done) {
    for (int x = 0; x < order.size(); ++x)
      if (!has(done, x) && (earlier[at(x)] & ~done) == 0) ways[done | only(x)] += ways[done];
  }
  return ways.back();
}

double chance_level(const PartialOrder& order) {
  double all = 1;
  for (int i = 2; i <= order.size(); ++i) all *= i;
  return static_cast<double>(count_valid_orders(order)) / all;
}

}  // namespace rehale::procedure
