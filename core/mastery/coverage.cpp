#include "core/mastery/coverage.h"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <functional>
#include <utility>

namespace rehale::mastery {
namespace {

// For a technique no single item covers: how many of its best items do, and the least of them.
struct Several {
  int count = 0;  // 0: all together do not
  double least = 0;
};

Several best_several(double missing, std::vector<double> adds) {
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

Cover plan_cover(std::span<const double> missing, std::span<const double> offers) {
  const std::size_t items = missing.empty() ? 0 : offers.size() / missing.size();
  const auto adds = [&](std::size_t item, std::size_t place) {
    return offers[item * missing.size() + place];
  };
  Cover cover{0, std::vector<bool>(items, false)};
  std::vector<Bits> covers(items, 0);
  Bits by_one = 0;
  for (std::size_t item = 0; item < items; ++item) {
    for (std::size_t place = 0; place < missing.size(); ++place) {
      if (adds(item, place) >= missing[place]) covers[item] |= bit(static_cast<int>(place));
    }
    by_one |= covers[item];
  }
  for (std::size_t place = 0; place < missing.size(); ++place) {
    if ((by_one & bit(static_cast<int>(place))) != 0) continue;
    std::vector<double> column;
    for (std::size_t item = 0; item < items; ++item) column.push_back(adds(item, place));
    const Several several = best_several(missing[place], std::move(column));
    cover.fewest += several.count;
    for (std::size_t item = 0; item < items && several.count > 0; ++item) {
      if (adds(item, place) >= several.least) cover.is_step[item] = true;
    }
  }
  std::vector<Bits> sets = covers;
  std::sort(sets.begin(), sets.end());
  sets.erase(std::unique(sets.begin(), sets.end()), sets.end());
  const std::vector<int> fewest = fewest_sets(by_one, sets);
  cover.fewest += fewest[by_one];
  for (std::size_t item = 0; item < items; ++item) {
    if (fewest[by_one & ~covers[item]] < fewest[by_one]) cover.is_step[item] = true;
  }
  return cover;
}

}  // namespace rehale::mastery
