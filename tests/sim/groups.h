// The same simulation over several worlds, pooled.
#pragma once

#include <functional>
#include <vector>

#include "tests/sim/run.h"

namespace rehale::sim {

using Worlds = std::vector<World>;
// The method may depend on the world: a form is made for its bank.
using MakeMethod = std::function<Method(const World&)>;

// The bank is its own truth.
World honest(mastery::Bank bank);
// One random bank has better items than the next: what is said of a layout is the mean of eight.
Worlds eight(const std::function<World(std::uint64_t seed)>& make);

// group.people in all, shared out evenly. One tally a length; none: one, when the plan stops.
std::vector<Tally> over(const Worlds& worlds, const Group& group, const std::vector<int>& lengths,
                        const MakeMethod& method);
Tally one(const Worlds& worlds, const mastery::Plan& plan, const Group& group, int length);
Tally to_the_end(const Worlds& worlds, const mastery::Plan& plan, const Group& group);
Tally at_random(const Worlds& worlds, const Group& group, int length);
Tally fixed(const Worlds& worlds, const Group& group, Form form, int length);

}  // namespace rehale::sim
