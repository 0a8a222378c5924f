// A practice that an educator sets: what is picked on the screens, and the link that comes of it.
// Screen state only; the code is core/exchange's, keys and seals are the page's
// (web/js/sealing.js).
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/exchange/assignment_code.h"

namespace rehale::screens {

struct SetPractice {
  std::vector<bool> families;  // by place in the library
  int due = 1;                 // place in k_due_weeks
  int questions = 0;           // place in k_set_questions
  int language = 0;            // 0: as the person likes; then by place in the library
  std::vector<catalog::Id> focus;
  std::set<catalog::Id> asked_for, not_here;  // families on their way, for the names of their steps
  std::optional<exchange::PublicKey> key;
  bool more = false, steps = false, seal = false;  // what is open
  std::string told;                                // path of what the last press did

  exchange::Assignment made;  // the rest: of the link on show
  std::string link, lines;    // lines: its QR code; empty while it is on its way
  bool no_qr = false;
};

// 0: no day.
inline constexpr int k_due_weeks[] = {1, 2, 4, 0};
// A link ends so long after its day: late ones are still taken, forgotten ones are not.
inline constexpr int k_weeks_after_due = 4;
// 0: as many as the check needs.
inline constexpr int k_set_questions[] = {0, 6, 8, 10, 12};

}  // namespace rehale::screens
