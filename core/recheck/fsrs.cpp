#include "core/recheck/fsrs.h"

#include <algorithm>

#include "core/base/portable_math.h"

namespace rehale::recheck {

namespace {

constexpr double k_least_stability = .001, k_most_stability = 36500;
constexpr Profile k_card{{.212,   1.2931, 2.3065, 8.2956, 6.4133, .8334, 3.0194,
                          .001,   1.8722, .1666,  .796,   1.4835, .0614, .2629,
                          1.6483, .6014,  1.8729, .5425,  .0912,  .0658, .1542}};

double power(double base, double exponent) { return portable_exp(exponent * portable_log(base)); }

double limited(double stability) {
  return std::clamp(stability, k_least_stability, k_most_stability);
}

int number_of(Grade grade) { return static_cast<int>(grade); }

// So that recall is 90 % after S days.
double factor(const Profile& profile) { return power(.9, -1 / profile.w[20]) - 1; }

// Not yet kept within 1 to 10.
double first_difficulty(const Profile& profile, int grade) {
  return profile.w[4] - portable_exp((grade - 1) * profile.w[5]) + 1;
}

double next_difficulty(const Profile& profile, double difficulty, int grade) {
  const auto& w = profile.w;
  const double moved = difficulty - w[6] * (grade - 3) * (10 - difficulty) / 9;
  return std::clamp(w[7] * first_difficulty(profile, 4) + (1 - w[7]) * moved, 1.0, 10.0);
}

double same_day(const Profile& profile, double stability, int grade) {
  const auto& w = profile.w;
  const double grown = power(stability, -w[19]) * portable_exp(w[17] * (grade - 3 + w[18]));
  return stability * (grade >= 2 ? std::max(grown, 1.0) : grown);
}

double after_lapse(const Profile& profile, const Memory& memory, double recall) {
  const auto& w = profile.w;
  const double left = w[11] * power(memory.difficulty, -w[12]) *
                      (power(memory.stability + 1, w[13]) - 1) * portable_exp((1 - recall) * w[14]);
  return std::min(limited(left), memory.stability / portable_exp(w[17] * w[18]));
}

double after_recall(const Profile& profile, const Memory& memory, double recall, int grade) {
  const auto& w = profile.w;
  double growth = portable_exp(w[8]) * (11 - memory.difficulty) * power(memory.stability, -w[9]) *
                  (portable_exp((1 - recall) * w[10]) - 1);
  if (grade == 2) growth *= w[15];
  if (grade == 4) growth *= w[16];
  return memory.stability * (1 + growth);
}

}  // namespace

const Profile& card_profile() { return k_card; }

const Profile& habit_profile() {
  static constexpr Profile k_habit = [] {
    Profile profile = k_card;
    profile.w[0] = 3;
    profile.w[1] = 7;
    profile.w[2] = 15.5;
    profile.w[3] = 30;
    profile.w[20] = .5;
    return profile;
  }();
  return k_habit;
}

Memory first_memory(const Profile& profile, Grade grade) {
  const int number = number_of(grade);
  return {std::max(profile.w[static_cast<std::size_t>(number - 1)], .1),
          std::clamp(first_difficulty(profile, number), 1.0, 10.0)};
}

Memory next_memory(const Profile& profile, Memory memory, double days, Grade grade) {
  const int number = number_of(grade);
  double stability = 0;
  if (days <= 0) {
    stability = same_day(profile, memory.stability, number);
  } else {
    const double recall = recall_after(profile, memory.stability, days);
    stability = grade == Grade::lost ? after_lapse(profile, memory, recall)
                                     : after_recall(profile, memory, recall, number);
  }
  return {limited(stability), next_difficulty(profile, memory.difficulty, number)};
}

double recall_after(const Profile& profile, double stability, double days) {
  return power(1 + factor(profile) * std::max(0.0, days) / stability, -profile.w[20]);
}

double days_until(const Profile& profile, double stability, double recall) {
  return stability * (power(recall, -1 / profile.w[20]) - 1) / factor(profile);
}

}  // namespace rehale::recheck
