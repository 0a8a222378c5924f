// What can be true of a person, and how likely it is before the first answer.
// Numbers only: must not know catalog ids, texts, screens or clocks.
// A state is a bit set: bit k < techniques: has technique k; bit techniques + b: holds
// misconception b.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"

namespace rehale::mastery {

using Bits = std::uint32_t;

inline constexpr int k_max_techniques = 12;
inline constexpr int k_max_misconceptions = 4;
inline constexpr int k_max_bits = k_max_techniques + k_max_misconceptions;
inline constexpr int k_min_bits = 3;  // the sums run in eights

[[nodiscard]] constexpr Bits bit(int index) { return Bits{1} << static_cast<unsigned>(index); }

struct TechniqueSpec {
  bool critical = false;
  double weight = 1;       // (0,1]: w_k, its share in choosing questions when critical
  double error_rate = .5;  // (0,1): published share of users who lack it
};

// A misconception is rare, so that a question tells few nats about it; twice the weight of a
// technique keeps it in the race. Set by simulation: with 1, fewer than .7 of the held ones are
// found.
inline constexpr double k_misconception_worth = 2;

struct MisconceptionSpec {
  int rules_out = 0;  // the technique nobody who holds it has: index of a technique
  double share = .3;  // (0,1): of those who lack that technique, how many hold it
  double weight = 1;  // (0,1]: v_b = k_misconception_worth times this
};

// Two sorts of users. A class has the odds of a technique multiplied (practised) or divided (new)
// by odds_factor; the centre is set so that the mixture keeps the published rate.
// [design]: no source gives the two numbers; 3 gives correlations of about .25 between techniques.
struct UserMix {
  double practised = .5;   // (0,1): share of practised users
  double odds_factor = 3;  // >= 1; 1: techniques are independent
};

struct Model {
  int techniques = 0, misconceptions = 0;
  Bits critical = 0;
  std::array<double, k_max_bits> weight{};  // w_k (0 when not critical), then v_b
  std::array<int, k_max_misconceptions> rules_out{};
  std::vector<double> prior;  // one a state, sums to 1; 0 where a misconception meets its technique

  [[nodiscard]] int bits() const { return techniques + misconceptions; }
  [[nodiscard]] std::size_t states() const {
    return std::size_t{1} << static_cast<unsigned>(bits());
  }
  // Misconception bits that rule out this technique.
  [[nodiscard]] Bits against(int technique) const;
  // No held misconception meets the technique it rules out.
  [[nodiscard]] bool feasible(Bits state) const;
};

// What is known of the people: the two lists behind every model.
struct People {
  std::span<const TechniqueSpec> techniques;
  std::span<const MisconceptionSpec> misconceptions;
};

// Errors: "mastery-size" (bits not in 3…16, too many of one sort), "mastery-range" (a number out of
// the range above, or a misconception that rules out no technique).
[[nodiscard]] Result<Model> make_model(const People& people, const UserMix& mix = {});

// Any prior: one number a state, none negative, sum 1 ± 1e-9, zero where not feasible (else
// "mastery-prior"). Error rates and shares are not looked at.
[[nodiscard]] Result<Model> make_model(const People& people, std::vector<double> prior);

// Shares of a technique among practised and new users, so that the mixture has it at 1 -
// error_rate.
struct ClassRates {
  double practised = 0, fresh = 0;
};
[[nodiscard]] ClassRates class_rates(double error_rate, const UserMix& mix);

}  // namespace rehale::mastery
