// What happens in a run, as it happens: an append-only log. A result is this log; all else is
// recomputed from it. Must not know what an answer means.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/catalog/model.h"

namespace rehale::check {

using catalog::Id;

// What a person gave. Options and cards by id, so that a log outlives a reordered question bank.
struct Answer {
  bool unsure = false;  // "I'm not sure": the rest is then empty
  std::vector<Id>
      picked;         // one, picture: one option; several: all ticked ones; order: cards in order
  double amount = 0;  // timing (s) and numbers (in the question's unit)

  friend bool operator==(const Answer&, const Answer&) = default;
};

enum class What : unsigned char {
  begin,        // family picked: family, seed, content, recent
  shown,        // a question of the check came up: question
  answered,     // question, answer
  retry_shown,  // practice after advice, counted apart: question
  retry_answered,
};

struct Event {
  What what = What::begin;
  double at_ms = 0;  // since the run began; never goes back
  Id question;
  Answer answer;
  // begin only:
  Id family;
  std::uint64_t seed = 0;
  std::string content;     // content id of the family's files
  std::string language;    // of the texts shown
  std::vector<Id> recent;  // questions of the run before, put after equals
  std::vector<Id> focus;   // techniques of the family that must be looked at; set by an educator
  int questions = 0;       // exactly so many are asked; 0: as many as the check needs

  friend bool operator==(const Event&, const Event&) = default;
};

using Log = std::vector<Event>;

}  // namespace rehale::check
