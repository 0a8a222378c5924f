// A big round pad: tap to start, tap to stop; nothing is held down. Shows a ring that fills and
// whole seconds (with reduced motion the number alone). Time comes from ui.now_ms(), never from
// frames.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::kit {

struct TimingPad {
  std::string id;
  std::string name;  // "Hold your breath as long as you would"
  double full_ms =
      10'000;  // the ring is full once around after this long; it says nothing of right
  double longest_ms = 60'000;  // stops by itself here
  bool locked = false;
};

// The caller keeps this; start with {}.
struct Timing {
  enum class Phase : unsigned char { ready, running, done } phase = Phase::ready;
  double started_ms = 0;   // on ui.now_ms()'s clock
  double measured_ms = 0;  // valid when done
};

Timing timing_pad(Ui& ui, const TimingPad& pad, Timing timing);

}  // namespace rehale::kit
