// Gates 1, 2, 3, 4 and 6 of facts/diagnosis.md 6.4.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "tests/sim/gates.h"
#include "tests/sim/groups.h"

namespace rehale::sim {

using mastery::Aim;
using mastery::Plan;

namespace {

// Symmetric threshold, 6 to 15 items, as in the facts' own runs.
Plan stopping(double tau) {
  Plan plan;
  plan.most = 15;
  plan.has_it = plan.not_yet = tau;
  return plan;
}

// The fixed forms of the protocol; the best of them by all critical right. The form built as if
// only right and wrong were stored is the stronger of the critical ones, here as in the facts
// (6.2).
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
  const std::vector<Tally> full = over(
      worlds, group, {10, 15}, [](const World&) { return adaptive(fixed_length(15, Aim::whole)); });
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
  const Worlds weak = eight(
      [](std::uint64_t seed) { return honest(reference_bank(seed, k_weak, Scoring::options)); });
  print_row("weak items, 10", one(weak, fixed_length(10), group, 10));
  print_row("weak items, stop, product", to_the_end(weak, Plan{}, group));
  Worlds careless = good;
  for (World& world : careless) world.careless = .05;
  print_row("5% careless, 10", one(careless, fixed_length(10), group, 10));
  print_row("5% careless, stop, product", to_the_end(careless, Plan{}, group));
}

}  // namespace

void check_reference_bank(Gates& gates, int people) {
  const PriorCheck prior = reference_prior_check();
  std::printf("Reference layout: 12 techniques, 5 critical, 100 items; 8 banks, %d people in all\n",
              people);
  std::printf("(a share of .91 has a standard error of %.4f)\n",
              std::sqrt(.91 * .09 / static_cast<double>(people)));
  gates.within("prior: base rates alone", prior.base_rates, .608, .005);
  gates.within("prior: ability known", prior.known_ability, .771, .005);
  const Group group{people, 1};
  const Worlds good = eight(
      [](std::uint64_t seed) { return honest(reference_bank(seed, k_good, Scoring::options)); });
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

}  // namespace rehale::sim
