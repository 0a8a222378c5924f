#include "core/cohort/tables.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rehale::cohort {

namespace {

const FamilyItems* items_of(const Summary& summary, std::string_view family) {
  const auto found = std::ranges::find(summary.items, family, &FamilyItems::family);
  return found == summary.items.end() ? nullptr : &*found;
}

bool counts(const Filter& filter, const Slice& slice) {
  return slice.family == filter.family &&
         (!filter.language || slice.language == *filter.language) &&
         (!filter.again || slice.again == *filter.again);
}

// Product-moment correlation from sums over n people: exact until the last division.
std::optional<double> correlation(const ItemCount& c) {
  const auto n = static_cast<double>(c.with_rest), x = static_cast<double>(c.right_with_rest);
  const auto y = static_cast<double>(c.rest);
  const double x_spread = n * x - x * x;  // right is 0 or 1: its square is itself
  const double y_spread = n * static_cast<double>(c.rest_squared) - y * y;
  if (c.with_rest < k_least_cell || x_spread <= 0 || y_spread <= 0) return {};
  return (n * static_cast<double>(c.rest_of_right) - x * y) / std::sqrt(x_spread * y_spread);
}

}  // namespace

Share share_of(std::int64_t k, std::int64_t n) {
  if (n < k_least_cell) return {};
  const Interval interval = wilson(k, n);
  return {false, k, n, interval.low, interval.high};
}

TechniqueTable technique_table(const Summary& summary, const Filter& filter) {
  Summary picked;
  for (Slice slice : summary.slices) {
    if (!counts(filter, slice)) continue;
    slice.language.clear();
    slice.again = false;
    picked = sum(picked, {{std::move(slice)}, {}, {}});
  }
  TechniqueTable table;
  if (picked.slices.empty()) return table;
  const Slice& all = picked.slices.front();
  table.helped = share_of(all.helped, all.checks);
  for (std::size_t k = 0; k < all.techniques.size(); ++k) {
    const TechniqueCount& count = all.techniques[k];
    TechniqueRow row{.technique = k};
    row.not_yet = share_of(count.not_yet, count.not_yet + count.has_it);
    row.unclear = share_of(count.unsure + count.unprobed, all.checks);
    if (all.checks >= k_least_cell) {
      row.lacking = static_cast<double>(count.lacking) / 65535 / static_cast<double>(all.checks);
    }
    table.rows.push_back(row);
  }
  for (const std::int64_t held : all.held) table.held.push_back(share_of(held, all.checks));
  return table;
}

std::vector<BeforeAfter> before_after(const Summary& summary, std::string_view family,
                                      std::size_t techniques) {
  std::vector<BeforeAfter> rows(std::min<std::size_t>(techniques, 32));
  for (std::size_t k = 0; k < rows.size(); ++k) rows[k].technique = k;
  for (const Track& track : summary.tracks) {
    if (track.family != family || track.first == track.last) continue;
    const std::uint32_t told =
        (track.first.has_it | track.first.not_yet) & (track.last.has_it | track.last.not_yet);
    for (std::size_t k = 0; k < rows.size(); ++k) {
      if (((told >> k) & 1U) == 0) continue;
      const bool lacked = ((track.first.not_yet >> k) & 1U) != 0;
      const bool lacks = ((track.last.not_yet >> k) & 1U) != 0;
      ++rows[k].pairs;
      rows[k].lacked_before += lacked ? 1 : 0;
      rows[k].lack_after += lacks ? 1 : 0;
      rows[k].gained += lacked && !lacks ? 1 : 0;
      rows[k].lost += !lacked && lacks ? 1 : 0;
    }
  }
  for (BeforeAfter& row : rows) {
    if (row.pairs < k_least_cell) {
      row = {.technique = row.technique};
      continue;
    }
    row.hidden = false;
    row.p = mcnemar_exact(row.lost, row.gained);
  }
  return rows;
}

std::vector<ItemRow> item_table(const Summary& summary, std::string_view family) {
  std::vector<ItemRow> rows;
  const FamilyItems* items = items_of(summary, family);
  if (items == nullptr) return rows;
  for (std::size_t n = 0; n < items->items.size(); ++n) {
    const ItemCount& count = items->items[n];
    rows.push_back({n, share_of(count.right, count.asked), share_of(count.unsure, count.asked),
                    correlation(count)});
  }
  return rows;
}

std::optional<double> reliability(const Summary& summary, std::string_view family) {
  const FamilyItems* items = items_of(summary, family);
  if (items == nullptr) return {};
  double variances = 0, covariances = 0;
  std::size_t used = 0, pairs = 0;
  for (std::size_t j = 0; j < items->items.size(); ++j) {
    const auto n = static_cast<double>(items->items[j].asked);
    const auto right = static_cast<double>(items->items[j].right);
    if (items->items[j].asked < k_least_cell) continue;
    ++used;
    variances += (right - right * right / n) / (n - 1);
    for (std::size_t i = 0; i < j; ++i) {
      const PairCount& pair = items->pairs[j * (j - 1) / 2 + i];
      if (items->items[i].asked < k_least_cell || pair.both_asked < k_least_cell) continue;
      const auto both = static_cast<double>(pair.both_asked);
      ++pairs;
      covariances +=
          (static_cast<double>(pair.both_right) -
           static_cast<double>(pair.one_right) * static_cast<double>(pair.other_right) / both) /
          (both - 1);
    }
  }
  if (used < 2 || pairs == 0) return {};
  const auto k = static_cast<double>(used);
  const double mean = covariances / static_cast<double>(pairs);
  const double whole = variances + k * (k - 1) * mean;
  if (whole <= 0) return {};
  return k / (k - 1) * (1 - variances / whole);
}

std::vector<TeachRow> teach_first(const TechniqueTable& table,
                                  const std::vector<TeachWeight>& weights) {
  std::vector<TeachRow> rows;
  for (const TechniqueRow& told : table.rows) {
    if (told.technique >= weights.size()) continue;
    const TeachWeight& weight = weights[told.technique];
    TeachRow row{told.technique, weight.critical, weight.weight, told.not_yet, 0};
    if (!row.not_yet.hidden) {
      row.key =
          weight.weight * static_cast<double>(row.not_yet.k) / static_cast<double>(row.not_yet.n);
    }
    rows.push_back(row);
  }
  std::ranges::stable_sort(rows, [](const TeachRow& one, const TeachRow& other) {
    return std::tuple(!one.critical, -one.key) < std::tuple(!other.critical, -other.key);
  });
  return rows;
}

void put_first(std::vector<TeachRow>& rows, const std::vector<std::size_t>& techniques) {
  auto next = rows.begin();
  for (const std::size_t technique : techniques) {
    const auto found = std::find_if(
        next, rows.end(), [technique](const TeachRow& row) { return row.technique == technique; });
    if (found == rows.end()) continue;
    std::rotate(next, found, found + 1);
    ++next;
  }
}

}  // namespace rehale::cohort
