// From a run to what the person should hear: what goes well, what to mend first and why, what could
// not be told. Ids only, no sentences. Must not know texts, screens, clocks.
#pragma once

#include <vector>

#include "core/check/run.h"

namespace rehale::advice {

using catalog::Id;

// The answer that showed something, so that a screen can say "you chose …".
struct Because {
  int question = -1;
  std::vector<Id> parts;  // options, bands or order rules of that question
};

struct ToMend {
  int technique = -1;
  int misconception = -1;  // the rule behind it, when one is held; else -1
  double lacking = 0;      // probability that the technique is lacking
  double need = 0;         // weight × probability: the ranking
  bool shown = false;      // an answer showed it, not only the diagnosis
  std::vector<Because> because;
};

struct GoingWell {
  int technique = -1;
  bool after_practice = false;  // not at first, but in the latest practice
};

// Answers about one technique that do not fit together.
struct Differing {
  int technique = -1;
  Because right, other;
};

struct Advice {
  std::vector<ToMend> to_mend;  // most needed first; screens show at most k_at_a_time
  std::vector<GoingWell> going_well;
  std::vector<int> cannot_tell;  // techniques: neither has it nor lacks it, nothing shown
  std::vector<Differing> differing;
  bool ready = false;  // every critical technique probed and had, nothing to mend among them
};

inline constexpr int k_at_a_time = 3;

// What practice after the advice showed for one technique, counted apart from first tries.
struct Practice {
  int tries = 0, right = 0;
};

[[nodiscard]] Advice advise(const check::Run& run);
[[nodiscard]] Practice practice_of(const check::Run& run, int technique);

}  // namespace rehale::advice
