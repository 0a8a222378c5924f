// When one person should check again: the grades of their checks of one family, so far and of now,
// put to the memory model. Must not know texts, screens, clocks: days come in.
#pragma once

#include <span>

#include "core/check/read_through.h"
#include "core/recheck/plan.h"

namespace rehale::advice {

// One check: the day it was done on, its answers and its verdict.
struct Checked {
  Day day = 0;
  check::ReadThrough read;
};

// What the check shows of a technique (index of the family).
[[nodiscard]] recheck::Grade grade_of(const catalog::Family& family, const check::ReadThrough& read,
                                      int technique);

// "recheck" (weeks) and "recheck_later" (months) of the library; recheck's own where it has none.
[[nodiscard]] recheck::Marks marks_of(const catalog::Library& library);

// Oldest first, the last one is the check that has just been done; at least one. `habit` of the
// answer is a technique of the family, or -1.
[[nodiscard]] recheck::NextCheck next_check(const catalog::Family& family,
                                            std::span<const Checked> checks,
                                            const recheck::Marks& marks);

}  // namespace rehale::advice
