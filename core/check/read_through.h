// A finished log's verdict without working out which question would have come next: many times
// faster than Run::replay, for reading many results. Must not know texts, screens, groups.
#pragma once

#include "core/check/run.h"

namespace rehale::check {

struct ReadThrough {
  std::vector<Given> given;  // first tries
  mastery::Verdict verdict;
};

// For a log that Run::replay takes: its given() and verdict(), to the bit. Of other logs it takes
// some that replay refuses (questions asked after the check would have stopped, up to the longest
// check). Errors: "log-empty", "begin-mismatch", "unknown-question", "out-of-turn",
// "time-runs-back", "answer-shape"; `where` names the event.
[[nodiscard]] Result<ReadThrough> read_through(const Course& course, const Log& log);

}  // namespace rehale::check
