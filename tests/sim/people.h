// Made-up people: what they have, and how they answer. Seeded; the same person answers the same
// question alike whatever was asked before (common random numbers across methods).
#pragma once

#include <cstdint>
#include <vector>

#include "tests/sim/bank.h"

namespace rehale::sim {

struct Person {
  mastery::Bits state = 0;
  bool careless = false;
  std::uint64_t seed = 0;
};

Person make_person(const World& world, std::uint64_t seed);

// One column a piece. In items of several pieces the first says whether the rest was answered.
std::vector<int> answer(const World& world, const Person& person, int item);

}  // namespace rehale::sim
