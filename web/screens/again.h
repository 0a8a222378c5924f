// When to check again, as the screen keeps it. Worked out by core/advice/again.h.
#pragma once

#include <string>

#include "core/advice/again.h"

namespace rehale::screens {

struct Again {
  recheck::NextCheck next;
  bool first = true;    // the mark of a first check, not of a later one
  std::string message;  // path of what the last press did; empty: nothing pressed
};

}  // namespace rehale::screens
