// How a habit fades and grows with practice: FSRS-6, a published model of memory (stability S: days
// until recall falls to 90 %; difficulty D: 1-10). Numbers only: must not know habits or dates.
// Formulas: facts/diagnosis.md 3.1, checked against npm ts-fsrs (tests/reference/recheck).
#pragma once

#include <array>

namespace rehale::recheck {

struct Profile {
  std::array<double, 21> w{};  // w[0..3] first stability by grade, w[20] how fast recall decays
};

// FSRS-6 as published, for flash cards.
[[nodiscard]] const Profile& card_profile();
// For habits of the hand: decay .5 and first stabilities 3, 7, 15.5 and 30 days, so that half of
// what was learnt is left after 6.5 months without use (meta-analysis of skill decay, accuracy;
// facts/diagnosis.md 3.3). Anchors a gain's half-life to a chance of recall: an analogy, to be
// fitted again once repeated checks exist.
[[nodiscard]] const Profile& habit_profile();

struct Memory {
  double stability = 0;   // days, [.001, 36500]
  double difficulty = 0;  // [1, 10]
};

enum class Grade : unsigned char { lost = 1, shaky = 2, there = 3, sure = 4 };

[[nodiscard]] Memory first_memory(const Profile& profile, Grade grade);
// After a check `days` >= 0 later (0: on the same day).
[[nodiscard]] Memory next_memory(const Profile& profile, Memory memory, double days, Grade grade);

// Chance that it is still there after `days` >= 0; 1 at once.
[[nodiscard]] double recall_after(const Profile& profile, double stability, double days);
// Days until that chance has fallen to `recall` in (0, 1].
[[nodiscard]] double days_until(const Profile& profile, double stability, double recall);

}  // namespace rehale::recheck
