// Made-up question banks and populations for the simulations: a truth that answers, and the bank
// the diagnosis believes in (the same, or deliberately another). Protocol:
// facts/diagnosis.md 6.1-6.3.
#pragma once

#include <cstdint>
#include <vector>

#include "core/mastery/evidence.h"

namespace rehale::sim {

// A population and how it really answers, beside what the diagnosis is told.
struct World {
  mastery::Bank truth, believed;
  double careless = 0;  // share of people who tap at random
};

// Range a bank's slips and guesses are drawn from.
struct Quality {
  double low = .05, high = .15;
};
inline constexpr Quality k_good{.05, .15}, k_weak{.15, .30};

enum class Scoring : unsigned char { options, right_wrong };

// K = 12, 5 critical (the first), 100 items of four options: 55 need one technique, 33 two, 12
// three. Prior: higher-order logistic, slope 1.7.
mastery::Bank reference_bank(std::uint64_t seed, Quality quality, Scoring scoring);
// The same questions with tables an expert would set blindly, and independent techniques at .6.
mastery::Bank expert_bank(std::uint64_t seed, Scoring scoring);
// 9 plain techniques and 3 with a misconception each (13,824 feasible states), held by .2; 100
// items that need one technique. The facts do not say more; this repeats their fixed form
// (.54/.89).
mastery::Bank misconception_bank(std::uint64_t seed, double pull);
// K = 5, right/wrong, uniform states, 620 items: 20 for each set of needs (Kaplan et al. 2015).
mastery::Bank kaplan_bank(std::uint64_t seed, Quality quality);

// Share of techniques classified rightly from the base rates, and from a perfectly known ability:
// the two figures facts/diagnosis.md 1.7 gives of the reference prior (.608 and .771).
struct PriorCheck {
  double base_rates = 0, known_ability = 0;
};
PriorCheck reference_prior_check();

}  // namespace rehale::sim
