// What a group's checks add up to: whole numbers only, so that the summary of a group is exactly
// the sum of its parts' summaries, in any order. Must not know texts, codes, screens.
#pragma once

#include <span>
#include <vector>

#include "core/cohort/record.h"

namespace rehale::cohort {

struct TechniqueCount {
  std::int64_t has_it = 0, not_yet = 0, unsure = 0, unprobed = 0;
  std::int64_t lacking = 0;  // sum of probabilities of lacking it, in 1/65535
  friend bool operator==(const TechniqueCount&, const TechniqueCount&) = default;
};

// People of one family, language, and first check or later one.
struct Slice {
  Id family, language;
  bool again = false;
  std::int64_t checks = 0, helped = 0, made_up = 0;
  std::vector<TechniqueCount> techniques;
  std::vector<std::int64_t> held;  // by misconception
  friend bool operator==(const Slice&, const Slice&) = default;
};

// How a question did: `rest` is the share right of a person's other questions, in 1/27720 (exact
// for up to 12 others).
inline constexpr std::int64_t k_rest_unit = 27720;
struct ItemCount {
  std::int64_t asked = 0, right = 0, unsure = 0;
  std::int64_t with_rest = 0, right_with_rest = 0;  // those with other questions
  std::int64_t rest = 0, rest_squared = 0, rest_of_right = 0;
  friend bool operator==(const ItemCount&, const ItemCount&) = default;
};
// Two questions that the same people answered.
struct PairCount {
  std::int64_t both_asked = 0, one_right = 0, other_right = 0, both_right = 0;
  friend bool operator==(const PairCount&, const PairCount&) = default;
};
struct FamilyItems {
  Id family;
  std::vector<ItemCount> items;
  std::vector<PairCount> pairs;  // of i < j at j(j-1)/2 + i
  friend bool operator==(const FamilyItems&, const FamilyItems&) = default;
};

// The first and the last check of a person who can be told apart.
struct Track {
  struct Check {
    Day day = 0;
    std::uint64_t key = 0;
    std::uint32_t has_it = 0, not_yet = 0;  // a bit a technique
    friend bool operator==(const Check&, const Check&) = default;
  };
  Id family;
  std::uint32_t person = 0;
  Check first, last;
  friend bool operator==(const Track&, const Track&) = default;
};

struct Summary {
  std::vector<Slice> slices;       // sorted by family, language, again
  std::vector<FamilyItems> items;  // sorted by family
  std::vector<Track> tracks;       // sorted by family, person
  friend bool operator==(const Summary&, const Summary&) = default;
};

// Copies of a run must be gone (drop_copies).
[[nodiscard]] Summary summarise(std::span<const Record> records);
// summarise(a and b) == sum(summarise(a), summarise(b)).
[[nodiscard]] Summary sum(const Summary& one, const Summary& other);

}  // namespace rehale::cohort
