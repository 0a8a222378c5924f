// Slip and guess from real answers: EM for noisy-state models (DINA, BLIM), right/wrong scored.
// Numbers only: must not know where the answers come from.
#pragma once

#include <span>
#include <vector>

#include "core/mastery/model.h"

namespace rehale::mastery {

// How many people gave exactly this pattern: bit i set: item i right.
struct PatternCount {
  Bits pattern = 0;
  double count = 0;
};

struct AnswerSheet {
  std::span<const Bits> states;  // the states people can be in (all 2^K, or a knowledge structure)
  std::span<const Bits> needs;   // item -> bits a right answer needs; at most 32 items
  std::span<const PatternCount> counts;
};

// Pseudo-counts of Beta priors: slip ~ Beta(slip_a, slip_b)… All 1: maximum likelihood.
struct CalibrationPlan {
  double slip_a = 1, slip_b = 1, guess_a = 1, guess_b = 1;
  int most_rounds = 20000;
  double tolerance = 1e-12;  // largest change of a slip or guess
};

struct Calibration {
  std::vector<double> slip, guess, shares;  // shares: one a state
  double log_likelihood = 0;                // of the data, prior not counted
  int rounds = 0;
  bool settled = false;
};

// Errors: "calibrate-empty" (no states, items or counts), "calibrate-range".
[[nodiscard]] Result<Calibration> calibrate(const AnswerSheet& sheet,
                                            const CalibrationPlan& plan = {});

// P(state | pattern) under a calibration; sums to 1.
[[nodiscard]] std::vector<double> state_given(const AnswerSheet& sheet, const Calibration& found,
                                              Bits pattern);

}  // namespace rehale::mastery
