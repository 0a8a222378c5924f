#include "core/mastery/calibrate.h"

#include <algorithm>
#include <cstddef>

#include "core/base/portable_math.h"

namespace rehale::mastery {
namespace {

// Expected counts of one round: what the M step needs.
struct Expected {
  std::vector<double> ready, slipped;    // item: people who have all it needs; of them not right
  std::vector<double> lacking, guessed;  // item: people who lack something; of them right
  std::vector<double> in_state;
  double log_likelihood = 0;
};

// P(pattern and state).
double joint_chance(const AnswerSheet& sheet, const Calibration& now, Bits pattern,
                    std::size_t state) {
  double chance = now.shares[state];
  for (std::size_t i = 0; i < sheet.needs.size(); ++i) {
    const bool ready = (sheet.states[state] & sheet.needs[i]) == sheet.needs[i];
    const double right = ready ? 1 - now.slip[i] : now.guess[i];
    chance *= (pattern >> i & 1U) != 0 ? right : 1 - right;
  }
  return chance;
}

void add_person(const AnswerSheet& sheet, Expected& sums, Bits pattern, std::size_t state,
                double share) {
  sums.in_state[state] += share;
  for (std::size_t i = 0; i < sheet.needs.size(); ++i) {
    const bool ready = (sheet.states[state] & sheet.needs[i]) == sheet.needs[i];
    const bool right = (pattern >> i & 1U) != 0;
    (ready ? sums.ready : sums.lacking)[i] += share;
    if (ready && !right) sums.slipped[i] += share;
    if (!ready && right) sums.guessed[i] += share;
  }
}

Expected expect(const AnswerSheet& sheet, const Calibration& now) {
  const std::vector<double> none(sheet.needs.size(), 0);
  Expected sums{none, none, none, none, std::vector<double>(sheet.states.size(), 0), 0};
  std::vector<double> chance(sheet.states.size());
  for (const PatternCount& seen : sheet.counts) {
    double all = 0;
    for (std::size_t s = 0; s < chance.size(); ++s) {
      chance[s] = joint_chance(sheet, now, seen.pattern, s);
      all += chance[s];
    }
    if (!(all > 0)) continue;
    sums.log_likelihood += seen.count * portable_log(all);
    for (std::size_t s = 0; s < chance.size(); ++s) {
      add_person(sheet, sums, seen.pattern, s, seen.count * chance[s] / all);
    }
  }
  return sums;
}

// (hits + a - 1) / (tries + a + b - 2), the mode of the Beta posterior; stays when nobody tried.
double rate(double hits, double tries, double a, double b, double before) {
  const double below = tries + a + b - 2;
  return below > 0 ? std::clamp((hits + a - 1) / below, 0.0, 1.0) : before;
}

// Returns the largest change of a slip or guess.
double maximise(const Expected& sums, const CalibrationPlan& plan, double people,
                Calibration& now) {
  double change = 0;
  for (std::size_t i = 0; i < now.slip.size(); ++i) {
    const double slip = rate(sums.slipped[i], sums.ready[i], plan.slip_a, plan.slip_b, now.slip[i]);
    const double guess =
        rate(sums.guessed[i], sums.lacking[i], plan.guess_a, plan.guess_b, now.guess[i]);
    change = std::max({change, slip - now.slip[i], now.slip[i] - slip, guess - now.guess[i],
                       now.guess[i] - guess});
    now.slip[i] = slip;
    now.guess[i] = guess;
  }
  for (std::size_t s = 0; s < now.shares.size(); ++s) now.shares[s] = sums.in_state[s] / people;
  return change;
}

}  // namespace

Result<Calibration> calibrate(const AnswerSheet& sheet, const CalibrationPlan& plan) {
  double people = 0;
  bool in_range = sheet.needs.size() <= 32 && plan.slip_a >= 1 && plan.slip_b >= 1 &&
                  plan.guess_a >= 1 && plan.guess_b >= 1;
  for (const PatternCount& seen : sheet.counts) {
    in_range = in_range && seen.count >= 0 &&
               (sheet.needs.size() == 32 || seen.pattern >> sheet.needs.size() == 0);
    people += seen.count;
  }
  if (sheet.states.empty() || sheet.needs.empty() || !(people > 0)) {
    return fail("calibrate-empty", "answers", "states, items and at least one answer are needed");
  }
  if (!in_range) {
    return fail("calibrate-range", "answers",
                "at most 32 items, counts not negative, Beta parameters of 1 or more");
  }
  Calibration now;
  now.slip.assign(sheet.needs.size(), .1);
  now.guess.assign(sheet.needs.size(), .1);
  now.shares.assign(sheet.states.size(), 1 / static_cast<double>(sheet.states.size()));
  while (now.rounds < plan.most_rounds && !now.settled) {
    const Expected sums = expect(sheet, now);
    now.settled = maximise(sums, plan, people, now) < plan.tolerance;
    ++now.rounds;
  }
  now.log_likelihood = expect(sheet, now).log_likelihood;
  return now;
}

std::vector<double> state_given(const AnswerSheet& sheet, const Calibration& found, Bits pattern) {
  std::vector<double> chance(sheet.states.size());
  double all = 0;
  for (std::size_t s = 0; s < chance.size(); ++s) {
    chance[s] = joint_chance(sheet, found, pattern, s);
    all += chance[s];
  }
  for (double& share : chance) share = all > 0 ? share / all : 0;
  return chance;
}

}  // namespace rehale::mastery
