// What this device keeps for the person, if they agreed, as the screens know of it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/cohort/record.h"
#include "core/exchange/kept.h"

namespace rehale::screens {

struct History {
  enum class State : unsigned char {
    unasked,  // nobody has looked yet
    none,     // nothing is kept: they did not agree
    agreed,
    closed,   // the browser does not let us look
    rubbish,  // what is there is none of ours, or broken
  } state = State::unasked;
  exchange::Kept kept;
  std::uint64_t key = 0;  // of the run on show, among those kept
  // The run on show against the one before; nothing where there is none.
  struct Since {
    Day day = 0;
    std::vector<cohort::Change> changes;  // by technique
  };
  std::optional<Since> since;
  bool other_questions = false;  // an older one cannot be compared
  std::string message;           // path of what the last press did; empty: nothing pressed
};

}  // namespace rehale::screens
