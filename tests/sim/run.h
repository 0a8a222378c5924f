// One method over one made-up group, and the fixed forms it has to beat.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tests/sim/bank.h"
#include "tests/sim/tally.h"

namespace rehale::sim {

// How questions are chosen: by a plan; else from a fixed list; else at random.
struct Method {
  std::optional<mastery::Plan> plan;
  std::vector<int> form;
};

Method adaptive(const mastery::Plan& plan);
Method fixed_form(std::vector<int> form);
Method random_form();

// The plan of the product, but always this long and without stopping.
mastery::Plan fixed_length(int items, mastery::Aim aim = mastery::Aim::decision);

struct Group {
  int people = 4000;
  std::uint64_t seed = 1;
};

// Adds to one tally a length the verdicts after so many items (lengths ascending); with no lengths,
// to the only tally the verdict when the plan stops.
void simulate(const World& world, const Method& method, const Group& group,
              const std::vector<int>& lengths, std::vector<Tally>& tallies);

// A fixed form chosen offline, item by item, for the largest expected gain given 100 made-up
// people's answers so far.
enum class Form : unsigned char {
  balanced,     // gain in the whole state
  critical,     // the same, from items that touch a critical technique
  by_decision,  // gain in the decision index: as strong as a fixed form by our own rule gets
};
std::vector<int> best_fixed_form(const mastery::Bank& bank, int items, Form form);

// Share of the two runs' questions that are the same, when one person takes the check twice, the
// second time with the first one's items named as recent and another seed.
double repeated_share(const World& world, const mastery::Plan& plan, const Group& group);

}  // namespace rehale::sim
