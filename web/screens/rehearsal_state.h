// A run-through as it goes on: what runs now, the log so far, what came of it. Makes the acts with
// their times; must not know drawing, texts or clocks (times come in).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/rehearsal/account.h"
#include "core/rehearsal/offer.h"

namespace rehale::screens {

class Rehearsal {
 public:
  enum class Phase : unsigned char { intro, acting, told };

  // What the person picked before the start.
  bool taps = true;  // tap to start, tap to stop; else a pad may be held down
  bool guided = false;
  bool two = false;

  void start(const catalog::Family& family, std::string content, double now_ms);
  void again() { phase_ = Phase::intro; }
  void finish(double now_ms);  // stops what runs, folds the log

  // A pad was pressed: stops what runs if it is that step, else does or starts it. What lasts and
  // is of the same part ends then.
  void choose(const catalog::Id& step, double now_ms);
  void stop(double now_ms);  // what runs now
  void skip(double now_ms);  // the wait that runs now: passed over

  [[nodiscard]] Phase phase() const { return phase_; }
  [[nodiscard]] const rehearsal::Take& take() const { return take_; }
  [[nodiscard]] const rehearsal::Account& account() const { return account_; }
  [[nodiscard]] const rehearsal::Offer& offer() const { return offer_; }
  [[nodiscard]] int tries() const { return tries_; }

  // The act that lasts and has not ended; nullptr: nothing runs.
  [[nodiscard]] const rehearsal::Act* running() const;
  [[nodiscard]] double elapsed_ms(double now_ms) const;
  // The steps on screen: while something runs, that one and what can be done meanwhile.
  [[nodiscard]] std::vector<catalog::Id> on_screen() const;

 private:
  [[nodiscard]] const catalog::RunStep& step(const catalog::Id& id) const;
  [[nodiscard]] double since_start(double now_ms) const;

  const catalog::Family* family_ = nullptr;
  Phase phase_ = Phase::intro;
  rehearsal::Take take_;
  rehearsal::Account account_;
  rehearsal::Offer offer_;
  int running_ = -1;  // place in take_.acts
  double began_ms_ = 0;
  int tries_ = 0;
};

}  // namespace rehale::screens
