#include "tests/sim/tally.h"

#include <algorithm>
#include <cmath>

#include "core/base/hash.h"

namespace rehale::sim {

using mastery::bit;
using mastery::Bits;

Tally::Tally(const mastery::Model& model, std::size_t items)
    : model_(&model), exposure_(items, 0), sequence_(k_fnv_start) {}

void Tally::add_technique(double p, bool has, bool is_critical) {
  const bool right = (p >= .5) == has;
  ++skills_;
  skill_right_ += right ? 1 : 0;
  brier_ += (p - (has ? 1 : 0)) * (p - (has ? 1 : 0));
  log_loss_ -= std::log(std::max(has ? p : 1 - p, 1e-12));
  guesses_.push_back({p, has ? 1.0 : 0.0});
  if (!is_critical) return;
  ++criticals_;
  critical_right_ += right ? 1 : 0;
  if (has) {
    false_gap_ += right ? 0 : 1;
  } else {
    ++lacking_;
    false_mastery_ += right ? 0 : 1;
  }
}

void Tally::add_misconceptions(const mastery::Verdict& verdict, Bits truth) {
  for (std::size_t b = 0; b < verdict.misconceptions.size(); ++b) {
    const bool holds = (truth & bit(model_->techniques + static_cast<int>(b))) != 0;
    const bool flag = verdict.misconceptions[b].held == mastery::Held::held;
    held_ += holds ? 1 : 0;
    flagged_ += flag ? 1 : 0;
    found_ += holds && flag ? 1 : 0;
  }
}

void Tally::add(const mastery::Diagnosis& run, Bits truth) {
  const mastery::Verdict verdict = run.verdict();
  const Bits techniques = bit(model_->techniques) - 1;
  const bool all = ((run.posterior().most_likely() ^ truth) & techniques) == 0;
  bool all_critical = true;
  bool decided = true;
  bool covered = true;
  for (int k = 0; k < model_->techniques; ++k) {
    const mastery::Verdict::Technique& found = verdict.techniques[static_cast<std::size_t>(k)];
    const bool has = (truth & bit(k)) != 0;
    const bool critical = (model_->critical & bit(k)) != 0;
    add_technique(found.probability, has, critical);
    const bool right = (found.probability >= .5) == has;
    if (!critical) continue;
    all_critical = all_critical && right;
    decided = decided && found.label != mastery::Label::unsure;
    covered = covered && found.probed;
    false_label_ += !has && found.label == mastery::Label::has_it ? 1 : 0;
  }
  ++people_;
  pattern_right_ += all ? 1 : 0;
  all_critical_right_ += all_critical ? 1 : 0;
  by_person_.push_back(all_critical);
  decided_ += decided ? 1 : 0;
  covered_ += covered ? 1 : 0;
  items_ += static_cast<double>(run.asked().size());
  add_misconceptions(verdict, truth);
  for (const int item : run.asked()) {
    ++exposure_[static_cast<std::size_t>(item)];
    const char byte[2] = {static_cast<char>(item & 0x7f), static_cast<char>(item >> 7)};
    sequence_ = fnv1a({byte, 2}, sequence_);
  }
}

double Tally::ece() const {
  std::vector<double> gap(10, 0);
  for (const Guess& guess : guesses_) {
    const int bin = std::min(9, static_cast<int>(guess.p * 10));
    gap[static_cast<std::size_t>(bin)] += guess.p - guess.truth;
  }
  double sum = 0;
  for (const double g : gap) sum += std::fabs(g);
  return sum / skills_;
}

double Tally::adaptive_ece() const {
  std::vector<Guess> sorted = guesses_;
  std::sort(sorted.begin(), sorted.end(), [](const Guess& a, const Guess& b) { return a.p < b.p; });
  double sum = 0;
  for (std::size_t bin = 0; bin < 10; ++bin) {
    double gap = 0;
    for (std::size_t i = bin * sorted.size() / 10; i < (bin + 1) * sorted.size() / 10; ++i) {
      gap += sorted[i].p - sorted[i].truth;
    }
    sum += std::fabs(gap);
  }
  return sum / skills_;
}

double Tally::most_exposed() const {
  return *std::max_element(exposure_.begin(), exposure_.end()) / people_;
}

}  // namespace rehale::sim
