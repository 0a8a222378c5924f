// Gates 5 and 7 of facts/diagnosis.md 6.4, and the figures of any bank.
#include <algorithm>
#include <array>
#include <cstdio>
#include <vector>

#include "core/check/plan.h"
#include "tests/sim/gates.h"
#include "tests/sim/groups.h"
#include "tests/sim/mistaken.h"

namespace rehale::sim {

using mastery::Aim;
using mastery::Plan;

void check_misconceptions(Gates& gates, int people) {
  std::printf("Misconceptions: 9 plain techniques, 3 that can be ruled out; %d people\n", people);
  print_header();
  for (const double pull : {.75, .60}) {
    const Worlds worlds =
        eight([&](std::uint64_t seed) { return honest(misconception_bank(seed, pull)); });
    const Tally form = over(worlds, {people, 2}, {9}, [](const World&) {
                         return fixed_form({0, 1, 2, 12, 13, 14, 24, 25, 26});
                       }).front();
    std::printf("  three fixed questions a misconception: sensitivity %.3f, PPV %.3f\n",
                form.sensitivity(), form.ppv());
    for (const Aim aim : {Aim::decision, Aim::whole}) {
      const Tally ten = one(worlds, fixed_length(10, aim), {people, 2}, 10);
      const std::string name = aim == Aim::decision ? "decision" : "full";
      print_row(name + ", 10, pull " + std::to_string(pull).substr(0, 4), ten);
      std::printf("  misconceptions: sensitivity %.3f, PPV %.3f\n", ten.sensitivity(), ten.ppv());
      if (pull < .7 || aim != Aim::decision) continue;
      gates.at_least("5 sensitivity by item 10", ten.sensitivity(), .70);
      gates.at_least("5 PPV by item 10", ten.ppv(), .90);
      gates.at_least("6 coverage", ten.covered(), 1);
    }
  }
}

void check_kaplan(Gates& gates, int people) {
  struct Row {
    const char* name;
    Quality quality;
    std::array<double, 6> pattern, skill;
  };
  // One random pool of 620 differs from the next by about .015 (standard deviation, pattern, weak
  // rows), as the one behind the facts did: the mean of sixteen.
  constexpr int k_pools = 16;
  const std::vector<int> lengths = {5, 8, 10, 12, 15, 20};
  // facts/diagnosis.md 1.9, rows "MI".
  const std::array<Row, 4> rows = {{
      {"U(.05,.15)",
       {.05, .15},
       {.728, .857, .928, .959, .987, .997},
       {.928, .967, .983, .990, .997, .999}},
      {"U(0,.20)",
       {0, .20},
       {.896, .968, .990, .996, .998, .999},
       {.970, .992, .998, .999, .999, 1}},
      {"U(.15,.25)",
       {.15, .25},
       {.409, .553, .634, .723, .813, .905},
       {.815, .869, .901, .926, .951, .976}},
      {"U(.10,.30)",
       {.10, .30},
       {.532, .664, .761, .838, .905, .963},
       {.859, .912, .940, .961, .978, .991}},
  }};
  std::printf("Kaplan layout: 5 techniques, 620 items, right/wrong, MI; 16 pools of %d people\n",
              people);
  Plan plan = fixed_length(20, Aim::whole);
  plan.near = plan.near_recent = 0;  // the rule alone
  plan.same_kind = 1;
  for (const Row& row : rows) {
    std::array<double, 6> pattern{};
    std::array<double, 6> skill{};
    for (int pool = 1; pool <= k_pools; ++pool) {
      const auto seed = static_cast<std::uint64_t>(pool);
      const Worlds pools = {honest(kaplan_bank(seed, row.quality))};
      const std::vector<Tally> got =
          over(pools, {people, seed}, lengths, [&](const World&) { return adaptive(plan); });
      for (std::size_t i = 0; i < lengths.size(); ++i) {
        pattern[i] += got[i].pattern() / k_pools;
        skill[i] += got[i].skill() / k_pools;
      }
    }
    for (std::size_t i = 0; i < lengths.size(); ++i) {
      const std::string at = std::string("7 ") + row.name + ", " + std::to_string(lengths[i]);
      gates.within((at + ", pattern").c_str(), pattern[i], row.pattern[i], .015);
      gates.within((at + ", skill").c_str(), skill[i], row.skill[i], .015);
    }
  }
}

void run_sim(const std::string& name, const mastery::Bank& bank, int people) {
  const Group group{people, 4};
  Worlds worlds = {honest(bank)};
  std::printf("%s: %d techniques, %d misconceptions, %zu items; %d people\n", name.c_str(),
              bank.model.techniques, bank.model.misconceptions, bank.items.size(), people);
  print_header();
  const int items = std::min(10, static_cast<int>(bank.items.size()));
  print_row("random, 10", at_random(worlds, group, items));
  print_row("fixed, balanced, 10", fixed(worlds, group, Form::balanced, items));
  print_row("fixed, critical, 10", fixed(worlds, group, Form::critical, items));
  print_row("fixed, by our index, 10", fixed(worlds, group, Form::by_decision, items));
  print_row("decision, 10", one(worlds, fixed_length(items), group, items));
  const Tally product = to_the_end(worlds, check::k_plan, group);
  print_row("as a check asks, 8-12", product);
  std::printf("  misconceptions: sensitivity %.3f, PPV %.3f; busiest item seen by %.2f\n",
              product.sensitivity(), product.ppv(), product.most_exposed());
  std::printf("  same questions in a second run: %.3f\n",
              repeated_share(worlds.front(), check::k_plan, {people / 8, 4}));
  worlds.front().careless = .05;
  print_row("5% careless, 8-12", to_the_end(worlds, check::k_plan, group));
  const Worlds wrong = eight([&](std::uint64_t seed) { return mistaken(bank, seed); });
  print_row("wrong tables+prior, 10", one(wrong, fixed_length(items), group, items));
  print_row("wrong, critical form, 10", fixed(wrong, group, Form::critical, items));
  print_row("wrong, 8-12", to_the_end(wrong, check::k_plan, group));
}

}  // namespace rehale::sim
