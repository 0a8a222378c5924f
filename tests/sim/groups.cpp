#include "tests/sim/groups.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace rehale::sim {

World honest(mastery::Bank bank) { return {bank, bank, 0}; }

Worlds eight(const std::function<World(std::uint64_t)>& make) {
  Worlds worlds;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) worlds.push_back(make(seed));
  return worlds;
}

std::vector<Tally> over(const Worlds& worlds, const Group& group, const std::vector<int>& lengths,
                        const MakeMethod& method) {
  const mastery::Bank& first = worlds.front().believed;
  std::vector<Tally> tallies(std::max<std::size_t>(1, lengths.size()),
                             Tally(first.model, first.items.size()));
  for (std::size_t i = 0; i < worlds.size(); ++i) {
    const Group part{group.people / static_cast<int>(worlds.size()), group.seed + i};
    simulate(worlds[i], method(worlds[i]), part, lengths, tallies);
  }
  return tallies;
}

Tally one(const Worlds& worlds, const mastery::Plan& plan, const Group& group, int length) {
  return over(worlds, group, {length}, [&](const World&) { return adaptive(plan); }).front();
}

Tally to_the_end(const Worlds& worlds, const mastery::Plan& plan, const Group& group) {
  return over(worlds, group, {}, [&](const World&) { return adaptive(plan); }).front();
}

Tally at_random(const Worlds& worlds, const Group& group, int length) {
  return over(worlds, group, {length}, [](const World&) { return random_form(); }).front();
}

Tally fixed(const Worlds& worlds, const Group& group, Form form, int length) {
  return over(worlds, group, {length},
              [&](const World& world) {
                return fixed_form(best_fixed_form(world.believed, length, form));
              })
      .front();
}

}  // namespace rehale::sim
