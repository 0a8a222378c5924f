// What a shared device counted on one day, and as a line of text that it may keep: how many checks,
// and how often each step was not there yet. No answer, no time, no order of people. Must not know
// screens or clocks.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"
#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/cohort/record.h"

namespace rehale::exchange {

inline constexpr std::size_t k_most_tally_bytes = 8000;
inline constexpr std::int64_t k_most_tally = 100'000;  // of one count: far more than a day has

struct DayTally {
  struct Step {
    catalog::Id technique;
    std::int64_t not_yet = 0;
    friend bool operator==(const Step&, const Step&) = default;
  };
  struct Family {
    catalog::Id id;
    std::int64_t checks = 0;
    std::vector<Step> steps;  // those that were not there yet at least once
    friend bool operator==(const Family&, const Family&) = default;
  };
  Day day = 0;
  std::vector<Family> families;
  friend bool operator==(const DayTally&, const DayTally&) = default;
};

// One check more on `today`; counts of another day are dropped first.
void count_check(DayTally& tally, Day today, const cohort::Record& record,
                 const catalog::Family& family);

// Fewer than cohort::k_least_cell: nothing, so that no screen or file can show it.
[[nodiscard]] std::optional<std::int64_t> shown_count(std::int64_t count);
[[nodiscard]] std::int64_t not_yet(const DayTally::Family& family, const catalog::Id& technique);

// "1 20782 spray 12 hold-breath 7 shake 2; soft-mist 3": day, then by family.
[[nodiscard]] std::string write_tally(const DayTally& tally);
// Errors: "tally-too-long", "tally-shape"; whoever reads it begins with an empty one then.
[[nodiscard]] Result<DayTally> read_tally(std::string_view text);

}  // namespace rehale::exchange
