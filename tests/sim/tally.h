// What came of a simulated group: how often the verdict was right, and how well its odds were
// meant.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/mastery/diagnosis.h"

namespace rehale::sim {

// Sums over people; the shares below are read from it.
class Tally {
 public:
  Tally(const mastery::Model& model, std::size_t items);

  void add(const mastery::Diagnosis& run, mastery::Bits truth);

  [[nodiscard]] double people() const { return people_; }
  [[nodiscard]] double skill() const { return skill_right_ / skills_; }
  // The likeliest state (MAP) is the true one, misconceptions aside.
  [[nodiscard]] double pattern() const { return pattern_right_ / people_; }
  [[nodiscard]] double critical() const { return critical_right_ / criticals_; }
  [[nodiscard]] double all_critical() const { return all_critical_right_ / people_; }
  // Called mastered (P >= .5), of critical techniques that are lacking; and the other way round.
  [[nodiscard]] double false_mastery() const { return false_mastery_ / lacking_; }
  [[nodiscard]] double false_gap() const { return false_gap_ / (criticals_ - lacking_); }
  // The label "has it", of critical techniques that are lacking: what a person would be told.
  [[nodiscard]] double false_label() const { return false_label_ / lacking_; }
  [[nodiscard]] double brier() const { return brier_ / skills_; }
  [[nodiscard]] double log_loss() const { return log_loss_ / skills_; }
  [[nodiscard]] double ece() const;           // ten bins of equal width
  [[nodiscard]] double adaptive_ece() const;  // ten bins of equal count
  [[nodiscard]] double items() const { return items_ / people_; }
  [[nodiscard]] double decided() const {
    return decided_ / people_;
  }  // every critical one labelled
  [[nodiscard]] double covered() const { return covered_ / people_; }  // every critical one probed
  // Misconceptions: found of those held; held of those flagged.
  [[nodiscard]] double sensitivity() const { return held_ > 0 ? found_ / held_ : 0; }
  [[nodiscard]] double ppv() const { return flagged_ > 0 ? found_ / flagged_ : 0; }
  // Share of people who saw the most used item.
  [[nodiscard]] double most_exposed() const;
  [[nodiscard]] const std::vector<bool>& all_critical_by_person() const { return by_person_; }
  // FNV-1a over every item asked, in order: two builds agree or they do not.
  [[nodiscard]] std::uint64_t sequence() const { return sequence_; }

 private:
  struct Guess {
    double p = 0, truth = 0;
  };
  void add_technique(double p, bool has, bool is_critical);
  void add_misconceptions(const mastery::Verdict& verdict, mastery::Bits truth);

  const mastery::Model* model_;
  double people_ = 0, skills_ = 0, criticals_ = 0, lacking_ = 0;
  double skill_right_ = 0, pattern_right_ = 0, critical_right_ = 0, all_critical_right_ = 0;
  double false_mastery_ = 0, false_gap_ = 0, false_label_ = 0, brier_ = 0, log_loss_ = 0;
  double items_ = 0, decided_ = 0, covered_ = 0, held_ = 0, flagged_ = 0, found_ = 0;
  std::vector<Guess> guesses_;
  std::vector<double> exposure_;
  std::vector<bool> by_person_;
  std::uint64_t sequence_;
};

}  // namespace rehale::sim
