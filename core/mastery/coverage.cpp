#include "core/mastery/coverage.h"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <functional>

namespace rehale::mastery {
namespace {

// For a technique no single item covers: how many of its best items do, and the least of them.
struct Several {
  int count = 0;  // 0: all together do not
  double least = 0;
};

Several best_several(double missing, std::size_t place, std::span<const Offer> offers) {
  std::vector<double> adds;
  for (const Offer& offer : offers) adds.push_back(offer.adds[place]);
  std::sort(adds.begin(), adds.end(), std::greater<>());
  double sum = 0;
  for (std::size_t n = 0; n < adds.size(); ++n) {
    sum += adds[n];
    if (sum >= missing) return {static_cast<int>(n) + 1, adds[n]};
  }
  return {};
}

// fewest[S]: the fewest of the given sets whose union contains S. Every element is in some set.
std::vector<int> fewest_sets(Bits elements, const std::vector<Bits>& sets) {
  std::vector<int> fewest(std::size_t{elements} + 1, 0);
  for (Bits wanted = 1; wanted <= elements; ++wanted) {
    if ((wanted & ~elements) != 0) continue;
    const Bits lowest = wanted & (~wanted + 1);
    int best = k_max_bits;
    for (const Bits set : sets) {
      if ((set & lowest) != 0) best = std::min(best, fewest[wanted & ~set] + 1);
    }
    fewest[wanted] = best;
  }
  return fewest;
}

}  // namespace

Cover plan_cover(std::span<const double> missing, std::span<const Offer> offers) {
  Cover cover{0, std::vector<bool>(offers.size(), false)};
  std::vector<Bits> covers(offers.size(), 0);
  Bits by_one = 0;
  for (std::size_t place = 0; place < missing.size(); ++place) {
    for (std::size_t i = 0; i < offers.size(); ++i) {
      if (offers[i].adds[place] >= missing[place]) covers[i] |= bit(static_cast<int>(place));
    }
  }
  for (const Bits set : covers) by_one |= set;
  for (std::size_t place = 0; place < missing.size(); ++place) {
    if ((by_one & bit(static_cast<int>(place))) != 0) continue;
    const Several several = best_several(missing[place], place, offers);
    cover.fewest += several.count;
    for (std::size_t i = 0; i < offers.size() && several.count > 0; ++i) {
      if (offers[i].adds[place] >= several.least) cover.is_step[i] = true;
    }
  }
  std::vector<Bits> sets = covers;
  std::sort(sets.begin(), sets.end());
  sets.erase(std::unique(sets.begin(), sets.end()), sets.end());
  const std::vector<int> fewest = fewest_sets(by_one, sets);
  cover.fewest += fewest[by_one];
  for (std::size_t i = 0; i < offers.size(); ++i) {
    if (fewest[by_one & ~covers[i]] < fewest[by_one]) cover.is_step[i] = true;
  }
  return cover;
}

}  // namespace rehale::mastery
