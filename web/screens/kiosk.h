// A device that many people share, one after another (#kiosk in the address). When nobody is there
// any more, the page is loaded anew: what one person told is in no memory that the next one meets.
// What it keeps are counts of the day and how staff set it up. Must not know drawing.
#pragma once

#include <string>

#include "core/exchange/day_tally.h"

namespace rehale::screens {

// Sources: W3C WCAG 2.2, 2.2.1 (a warning of at least 20 s, one simple action, ten times and more);
// facts/users.md section 3 for 90 s and 30 s. With reading aloud twice as long: it takes its time.
struct IdleLimits {
  double quiet_ms = 90'000;
  double warning_ms = 30'000;
};
inline constexpr IdleLimits k_idle{};
// While a result can be scanned: gone after a minute.
inline constexpr IdleLimits k_idle_handing_over{.quiet_ms = 30'000, .warning_ms = 30'000};
inline constexpr double k_cleaning_ms = 60'000;

enum class Presence : unsigned char { here, asked, gone };
[[nodiscard]] Presence presence(double quiet_for_ms, const IdleLimits& limits);
// Whole seconds that the warning still has.
[[nodiscard]] int seconds_left(double quiet_for_ms, const IdleLimits& limits);
// When it has to be looked at again, from now.
[[nodiscard]] double look_again_in_ms(double quiet_for_ms, const IdleLimits& limits);

struct Kiosk {
  bool on = false;
  std::string touched;    // as the page last told of a key or a finger
  double touched_ms = 0;  // since when nothing was touched
  bool ending = false;    // the page is being loaded anew
  bool reads_aloud = false;
  std::string speech;  // what the page was last told to say by itself; "": nothing
  bool still = false;  // the pictures of the start hold still
  double clean_until_ms = 0;
  exchange::DayTally tally;
  std::string health;  // as the page tells (web/js/kiosk.js): numbers, one a line
  std::string told;    // path of what the last press of staff did
};

}  // namespace rehale::screens
