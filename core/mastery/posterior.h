// The exact posterior over all 2^(K+B) states, and its superset sums.
// Numbers only: must not know what was asked. Same bits on every compiler.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/mastery/evidence.h"
#include "core/mastery/model.h"

namespace rehale::mastery {

inline constexpr std::size_t k_lanes = 8;  // states that are worked on together

class Posterior {
 public:
  explicit Posterior(const Model& model);

  // Bayes' rule for one piece; returns P(column | answers before), > 0.
  // column in [0, piece.columns); the piece's mask lies within the model's bits.
  double update(const Piece& piece, int column);
  // The same for several pieces one after another, to the bit and with fewer passes over the
  // states. A column that the piece has not, as -1, says nothing.
  void update_each(std::span<const Piece> pieces, std::span<const int> columns);

  // Time passes: who has the technique keeps it with probability `kept` in [0,1].
  void forget(int technique, double kept);
  // Coaching: who lacks it has it now with probability `learned` in [0,1]; misconceptions against
  // it go with it (`against`: Model::against(technique)).
  void learn(int technique, double learned, Bits against = 0);

  [[nodiscard]] std::span<const double> states() const { return states_; }
  [[nodiscard]] double operator[](Bits state) const { return states_[state]; }
  [[nodiscard]] Bits most_likely() const;  // the lowest of equals
  [[nodiscard]] double entropy() const;    // nats
  // Eights of neighbouring states that are not all ruled out, by number: the others stay 0.
  [[nodiscard]] std::span<const std::uint16_t> live() const { return live_; }

 private:
  void find_live();
  double multiply(const Piece& piece, int column, double scale);
  void scale_by(double scale);

  std::vector<double> states_;
  std::vector<std::uint16_t> live_;
};

// z[m] = sum of the posterior over all states that contain m: K·2^(K-1) additions for all m.
class SupersetSums {
 public:
  void sum(std::span<const double> states);  // size: a power of two >= 8
  // Only for m within `wanted`, to the bit as sum() gives them; nothing may be asked about others.
  void sum_within(const Posterior& posterior, Bits wanted);

  // P(all bits of m are set).
  [[nodiscard]] double all_of(Bits m) const { return sums_[m]; }
  [[nodiscard]] double marginal(int index) const { return sums_[bit(index)]; }
  // P(both bits set).
  [[nodiscard]] double joint(int one, int other) const { return sums_[bit(one) | bit(other)]; }
  // -P ln P - (1-P) ln(1-P) of a bit, nats.
  [[nodiscard]] double uncertainty(int index) const {
    return uncertainty_[static_cast<std::size_t>(index)];
  }
  [[nodiscard]] std::span<const double> all() const { return sums_; }

 private:
  void tell_uncertainty(Bits wanted);

  std::vector<double> sums_, folded_;
  std::array<double, k_max_bits> uncertainty_{};
};

// Mass of each of the piece's groups, by Möbius over its few bits.
[[nodiscard]] std::vector<double> group_masses(const SupersetSums& sums, const Piece& piece);

}  // namespace rehale::mastery
