// People who are not as a bank says: what diagnosis does when its tables and its prior are wrong.
#pragma once

#include <cstdint>

#include "tests/sim/bank.h"

namespace rehale::sim {

// The bank as believed; in truth each chance of each row is off by a factor between 1/2 and 2 (rows
// scaled to 1 again), and so are the odds of each technique and misconception. The factor is
// [design]: facts/diagnosis.md 6.1 asks for "tables expert-set" and says no size for a shipped
// bank.
World mistaken(const mastery::Bank& believed, std::uint64_t seed);

}  // namespace rehale::sim
