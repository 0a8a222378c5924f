// A group's tables, from its summary. Cells of fewer than 5 people are hidden, here already, so
// that no screen or file can show them. (Whoever has two tables can still take one from the other:
// give away single tables only.) Must not know texts or screens.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/cohort/stats.h"
#include "core/cohort/summary.h"

namespace rehale::cohort {

inline constexpr std::int64_t k_least_cell = 5;

// k of n with its 95 % interval (Wilson). Hidden: all numbers are 0.
struct Share {
  bool hidden = true;
  std::int64_t k = 0, n = 0;
  double low = 0, high = 0;
  friend bool operator==(const Share&, const Share&) = default;
};
[[nodiscard]] Share share_of(std::int64_t k, std::int64_t n);

// Which checks count; nothing given: all.
struct Filter {
  Id family;
  std::optional<Id> language;
  std::optional<bool> again;
};

struct TechniqueRow {
  std::size_t technique = 0;
  Share not_yet;       // of those who could be told
  Share unclear;       // unsure or never probed, of all checks
  double lacking = 0;  // mean probability of lacking it; 0 when hidden
};
struct TechniqueTable {
  Share helped;  // of all checks
  std::vector<TechniqueRow> rows;
  std::vector<Share> held;  // by misconception
};
[[nodiscard]] TechniqueTable technique_table(const Summary& summary, const Filter& filter);

// The same people's first and last check.
struct BeforeAfter {
  std::size_t technique = 0;
  bool hidden = true;
  std::int64_t pairs = 0;  // told both times
  std::int64_t lacked_before = 0, lack_after = 0, gained = 0, lost = 0;
  double p = 1;  // exact McNemar
};
[[nodiscard]] std::vector<BeforeAfter> before_after(const Summary& summary, std::string_view family,
                                                    std::size_t techniques);

struct ItemRow {
  std::size_t question = 0;
  Share right;  // difficulty: the share right
  Share unsure;
  std::optional<double> discrimination;  // correlation with the share right of the others
};
[[nodiscard]] std::vector<ItemRow> item_table(const Summary& summary, std::string_view family);

// Cronbach's alpha (KR-20 for right and not right) from covariances of all pairs of questions that
// at least k_least_cell people answered; pairs that nobody answered count as the mean pair. Nothing
// when fewer than 2 questions or no pair can be used. A check asks each person other questions:
// read it as a rough measure.
[[nodiscard]] std::optional<double> reliability(const Summary& summary, std::string_view family);

// What to teach a group first: share lacking times weight, critical ones before the others.
struct TeachRow {
  std::size_t technique = 0;
  bool critical = false;
  double weight = 0;
  Share not_yet;
  double key = 0;  // weight times share; what the order goes by
};
struct TeachWeight {
  bool critical = false;
  double weight = 1;
};
[[nodiscard]] std::vector<TeachRow> teach_first(const TechniqueTable& table,
                                                const std::vector<TeachWeight>& weights);
// The educator's own order: the techniques named come first, in that order, the rest follows.
void put_first(std::vector<TeachRow>& rows, const std::vector<std::size_t>& techniques);

}  // namespace rehale::cohort
