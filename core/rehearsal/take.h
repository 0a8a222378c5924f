// The log of one run-through: what the person chose, from when to when. A result is this log; all
// else is recomputed from it. It holds timing, never a breath. Must not know clocks or screens.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"

namespace rehale::rehearsal {

using catalog::Id;

inline constexpr double k_slip_ms = 500;  // a finger that lets go and comes back sooner: no break
inline constexpr double k_longest_act_ms = 600'000, k_longest_take_ms = 3'600'000;
inline constexpr std::size_t k_most_acts = 200;

struct Act {
  Id step;                          // of the family's run-through
  double start_ms = 0, end_ms = 0;  // since the run-through began; equal for what does not last
  bool skipped = false;             // a wait that was passed over: nothing was measured

  friend bool operator==(const Act&, const Act&) = default;
};

struct Take {
  Id family;
  std::string content;    // content id of the family's files
  bool guided = false;    // the pace guide was on: practice, no evidence
  int doses = 1;          // 1 or 2
  std::vector<Act> acts;  // by start

  friend bool operator==(const Take&, const Take&) = default;
};

// Errors: "take-mismatch" (another family, doses not 1 or 2), "too-many-acts", "unknown-step",
// "act-time" (no number, negative, ends before it starts, past the hour), "act-too-long",
// "acts-out-of-order", "acts-overlap" (two of one part at once). `where`: "act 3".
[[nodiscard]] Result<void> check_take(const catalog::Family& family, const Take& take);

// Acts of one step that follow each other within k_slip_ms, with nothing else of that part between,
// joined into one. The acts are by start.
[[nodiscard]] std::vector<Act> without_slips(const catalog::Family& family,
                                             const std::vector<Act>& acts);

}  // namespace rehale::rehearsal
