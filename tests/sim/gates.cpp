#include "tests/sim/gates.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <vector>

#include "tests/sim/run.h"

namespace rehale::sim {

using mastery::Aim;
using mastery::Plan;

namespace {

constexpr std::uint64_t k_banks = 8;

World honest(mastery::Bank bank) { return {bank, bank, 0}; }

// One random bank has better items than the next: what is said of the layout is the mean of eight.
using Worlds = std::vector<World>;

template <class Make>
Worlds eight(Make make) {
  Worlds worlds;
  for (std::uint64_t seed = 1; seed <= k_banks; ++seed) worlds.push_back(make(seed));
  return worlds;
}

// Symmetric threshold, 6 to 15 items, as in the facts' own runs.
Plan stopping(double tau) {
  Plan plan;
  plan.most = 15;
  plan.has_it = plan.not_yet = tau;
  return plan;
}

// The method may depend on the world: a form is made for its bank.
template <class MakeMethod>
std::vector<Tally> over(const Worlds& worlds, const Group& group, const std::vector<int>& lengths,
                        MakeMethod method) {
  const mastery::Bank& first = worlds.front().believed;
  std::vector<Tally> tallies(std::max<std::size_t>(1, lengths.size()),
                             Tally(first.model, first.items.size()));
  for (std::size_t i = 0; i < worlds.size(); ++i) {
    const Group part{group.people / static_cast<int>(worlds.size()), group.seed + i};
    simulate(worlds[i], method(worlds[i]), part, lengths, tallies);
  }
  return tallies;
}

Tally one(const Worlds& worlds, const Plan& plan, const Group& group, int length) {
  return over(worlds, group, {length}, [&](const World&) { return adaptive(plan); }).front();
}

Tally to_the_end(const Worlds& worlds, const Plan& plan, const Group& group) {
  return over(worlds, group, {}, [&](const World&) { return adaptive(plan); }).front();
}

Tally at_random(const Worlds& worlds, const Group& group, int length) {
  return over(worlds, group, {length}, [](const World&) { return random_form(); }).front();
}

struct Discordant {
  int only_first = 0, only_second = 0;
};

Discordant compare(const Tally& first, const Tally& second) {
  Discordant found;
  for (std::size_t i = 0; i < first.all_critical_by_person().size(); ++i) {
    const bool a = first.all_critical_by_person()[i];
    const bool b = second.all_critical_by_person()[i];
    found.only_first += a && !b ? 1 : 0;
    found.only_second += b && !a ? 1 : 0;
  }
  return found;
}

Tally fixed(const Worlds& worlds, const Group& group, Form form, int length) {
  return over(worlds, group, {length}, [&](const World& world) {
           return fixed_form(best_fixed_form(world.believed, length, form));
         }).front();
}

double print_paired(const char* name, const Tally& ours, const Tally& rival) {
  const Discordant found = compare(ours, rival);
  const double p = mcnemar_exact(found.only_first, found.only_second);
  std::printf("  all critical right, %s: %d only adaptive, %d only fixed, exact p = %.2g\n", name,
              found.only_first, found.only_second, p);
  return p;
}

// The fixed forms of the protocol; the best of them by all critical right. The form built as if only
// right and wrong were stored is the stronger of the critical ones, here as in the facts (6.2).
Tally best_rival(const Worlds& worlds, const Worlds& right_wrong, const Group& group) {
  std::size_t bank = 0;
  const std::array<Tally, 3> rivals = {
      fixed(worlds, group, Form::balanced, 10), fixed(worlds, group, Form::critical, 10),
      over(worlds, group, {10}, [&](const World&) {
        return fixed_form(best_fixed_form(right_wrong[bank++].believed, 10, Form::critical));
      }).front()};
  print_row("fixed, balanced, 10", rivals[0]);
  print_row("fixed, critical, 10", rivals[1]);
  print_row("fixed, critical r/w, 10", rivals[2]);
  return *std::max_element(rivals.begin(), rivals.end(), [](const Tally& a, const Tally& b) {
    return a.all_critical() < b.all_critical();
  });
}

void check_decision(Gates& gates, const Worlds& worlds, const Worlds& right_wrong,
                    const Group& group) {
  print_row("random, 10", at_random(worlds, group, 10));
  const Tally rival = best_rival(worlds, right_wrong, group);
  const Tally ours = fixed(worlds, group, Form::by_decision, 10);
  print_row("fixed, by our index, 10", ours);
  for (const int length : {6, 8, 12, 15}) {
    print_row("decision, " + std::to_string(length),
              one(worlds, fixed_length(length), group, length));
  }
  const Tally ten = one(worlds, fixed_length(10), group, 10);
  print_row("decision, 10", ten);
  const double p = print_paired("best fixed form of the protocol", ten, rival);
  print_paired("fixed form by our own index", ten, ours);
  gates.at_least("1 critical accuracy, 10 items", ten.critical(), .975);
  gates.at_least("1 all critical right", ten.all_critical(), .90);
  gates.at_most("1 false mastery", ten.false_mastery(), .03);
  gates.at_least("1 gain on the best fixed form", ten.critical() - rival.critical(), .04);
  gates.at_most("1 its false mastery, halved", ten.false_mastery(), rival.false_mastery() / 2);
  gates.at_most("1 McNemar p", p, .001);
  gates.at_most("4 ECE, right model", ten.ece(), .01);
  gates.at_least("6 coverage", ten.covered(), 1);
}

void check_full(Gates& gates, const Worlds& worlds, const Group& group) {
  const std::vector<Tally> full = over(worlds, group, {10, 15}, [](const World&) {
    return adaptive(fixed_length(15, Aim::whole));
  });
  print_row("full, 10", full[0]);
  print_row("full, 15", full[1]);
  gates.at_least("2 skill, 10 items", full[0].skill(), .93);
  gates.at_least("2 pattern, 10 items", full[0].pattern(), .54);
  gates.at_most("2 Brier, 10 items", full[0].brier(), .055);
  gates.at_least("2 skill, 15 items", full[1].skill(), .97);
  gates.at_least("2 pattern, 15 items", full[1].pattern(), .74);
}

void check_stop(Gates& gates, const Worlds& worlds, const Group& group) {
  const Tally sure = to_the_end(worlds, stopping(.95), group);
  const Tally quick = to_the_end(worlds, stopping(.90), group);
  const Tally product = to_the_end(worlds, Plan{}, group);
  print_row("stop, .95, 6-15", sure);
  print_row("stop, .90, 6-15", quick);
  print_row("stop, product, 6-12", product);
  gates.at_most("3 mean items, .95", sure.items(), 8.3);
  gates.at_least("3 critical accuracy, .95", sure.critical(), .983);
  gates.at_most("3 false mastery, .95", sure.false_mastery(), .02);
  gates.at_least("3 decided, .95", sure.decided(), .95);
  gates.at_most("3 mean items, .90", quick.items(), 7.2);
  gates.at_least("3 critical accuracy, .90", quick.critical(), .970);
  gates.at_least("6 coverage, product plan", product.covered(), 1);
}

void check_mistaken(Gates& gates, const Group& group) {
  const Worlds wrong = eight([](std::uint64_t seed) {
    return World{reference_bank(seed, k_good, Scoring::options),
                 expert_bank(seed, Scoring::options), 0};
  });
  const Tally ten = one(wrong, fixed_length(10), group, 10);
  const Tally fifteen = one(wrong, fixed_length(15), group, 15);
  print_row("wrong tables+prior, 10", ten);
  print_row("wrong tables+prior, 15", fifteen);
  print_row("wrong, stop, product", to_the_end(wrong, Plan{}, group));
  gates.at_most("4 ECE, wrong model, 10", ten.ece(), .035);
  gates.at_most("4 ECE, wrong model, 15", fifteen.ece(), .055);
  gates.at_least("4 critical accuracy, wrong model", ten.critical(), .96);
  gates.at_least("6 coverage, wrong model", ten.covered(), 1);
}

void show_conditions(const Worlds& good, const Worlds& right_wrong, const Group& group) {
  print_row("right/wrong scored, 10", one(right_wrong, fixed_length(10), group, 10));
  const Worlds weak = eight([](std::uint64_t seed) {
    return honest(reference_bank(seed, k_weak, Scoring::options));
  });
  print_row("weak items, 10", one(weak, fixed_length(10), group, 10));
  print_row("weak items, stop, product", to_the_end(weak, Plan{}, group));
  Worlds careless = good;
  for (World& world : careless) world.careless = .05;
  print_row("5% careless, 10", one(careless, fixed_length(10), group, 10));
  print_row("5% careless, stop, product", to_the_end(careless, Plan{}, group));
}

}  // namespace

void Gates::report(const char* name, bool holds, double value, const char* relation,
                   double bound) {
  std::printf("  %-4s %-36s %.4g %s %.4g\n", holds ? "ok" : "MISS", name, value, relation, bound);
  missed_ += holds ? 0 : 1;
}
void Gates::at_least(const char* name, double value, double bound) {
  report(name, value >= bound, value, ">=", bound);
}
void Gates::at_most(const char* name, double value, double bound) {
  report(name, value <= bound, value, "<=", bound);
}
void Gates::within(const char* name, double value, double wanted, double tolerance) {
  report(name, std::fabs(value - wanted) <= tolerance, value, "~", wanted);
}

void print_header() {
  std::printf("%-26s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s\n", "", "skill",
              "patt", "crit", "allcr", "FM", "FG", "FMlab", "Brier", "logl", "ECE", "aECE", "items",
              "decid", "cover");
}

void print_row(const std::string& name, const Tally& t) {
  std::printf("%-26s %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.2f %6.3f "
              "%6.4f\n",
              name.c_str(), t.skill(), t.pattern(), t.critical(), t.all_critical(),
              t.false_mastery(), t.false_gap(), t.false_label(), t.brier(), t.log_loss(), t.ece(),
              t.adaptive_ece(), t.items(), t.decided(), t.covered());
}

void check_reference_bank(Gates& gates, int people) {
  const PriorCheck prior = reference_prior_check();
  std::printf("Reference layout: 12 techniques, 5 critical, 100 items; 8 banks, %d people in all\n",
              people);
  std::printf("(a share of .91 has a standard error of %.4f)\n",
              std::sqrt(.91 * .09 / static_cast<double>(people)));
  gates.within("prior: base rates alone", prior.base_rates, .608, .005);
  gates.within("prior: ability known", prior.known_ability, .771, .005);
  const Group group{people, 1};
  const Worlds good = eight([](std::uint64_t seed) {
    return honest(reference_bank(seed, k_good, Scoring::options));
  });
  const Worlds right_wrong = eight([](std::uint64_t seed) {
    return honest(reference_bank(seed, k_good, Scoring::right_wrong));
  });
  print_header();
  check_decision(gates, good, right_wrong, group);
  check_full(gates, good, group);
  check_stop(gates, good, group);
  check_mistaken(gates, group);
  show_conditions(good, right_wrong, group);
  std::printf("  same questions in a second run (product plan): %.3f\n",
              repeated_share(good.front(), Plan{}, {people / 8, 1}));
}

void check_misconceptions(Gates& gates, int people) {
  std::printf("Misconceptions: 9 plain techniques, 3 that can be ruled out; %d people\n", people);
  print_header();
  for (const double pull : {.75, .60}) {
    const Worlds worlds = eight([&](std::uint64_t seed) {
      return honest(misconception_bank(seed, pull));
    });
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
      {"U(.05,.15)", {.05, .15}, {.728, .857, .928, .959, .987, .997},
       {.928, .967, .983, .990, .997, .999}},
      {"U(0,.20)", {0, .20}, {.896, .968, .990, .996, .998, .999},
       {.970, .992, .998, .999, .999, 1}},
      {"U(.15,.25)", {.15, .25}, {.409, .553, .634, .723, .813, .905},
       {.815, .869, .901, .926, .951, .976}},
      {"U(.10,.30)", {.10, .30}, {.532, .664, .761, .838, .905, .963},
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
  const Tally product = to_the_end(worlds, Plan{}, group);
  print_row("stop, product, 6-12", product);
  std::printf("  misconceptions: sensitivity %.3f, PPV %.3f; busiest item seen by %.2f\n",
              product.sensitivity(), product.ppv(), product.most_exposed());
  std::printf("  same questions in a second run: %.3f\n",
              repeated_share(worlds.front(), Plan{}, {people / 8, 4}));
  worlds.front().careless = .05;
  print_row("5% careless, product", to_the_end(worlds, Plan{}, group));
}

}  // namespace rehale::sim
