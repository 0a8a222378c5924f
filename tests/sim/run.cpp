#include "tests/sim/run.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

#include "core/base/rng.h"
#include "tests/sim/people.h"

namespace rehale::sim {

using mastery::Aim;
using mastery::Bank;
using mastery::Diagnosis;
using mastery::Plan;

namespace {

std::vector<int> all_items(const Bank& bank) {
  std::vector<int> items(bank.items.size());
  std::iota(items.begin(), items.end(), 0);
  return items;
}

// The next item of the method, or -1 at the end.
int next_item(const Method& method, const std::vector<int>& list, Diagnosis& run) {
  if (!method.plan) return run.asked().size() < list.size() ? list[run.asked().size()] : -1;
  return run.next().item;
}

double gain(const mastery::Worth& worth, Form form) {
  return form == Form::by_decision ? worth.decision : worth.whole;
}

std::vector<int> allowed_items(const Bank& bank, Form form) {
  std::vector<int> items = all_items(bank);
  if (form != Form::critical) return items;
  std::erase_if(items, [&](int item) {
    return (bank.items[static_cast<std::size_t>(item)].touches() & bank.model.critical) == 0;
  });
  return items;
}

}  // namespace

Method adaptive(const Plan& plan) { return {plan, {}}; }
Method fixed_form(std::vector<int> form) { return {std::nullopt, std::move(form)}; }
Method random_form() { return {std::nullopt, {}}; }

Plan fixed_length(int items, Aim aim) {
  Plan plan;
  plan.most = items;
  plan.aim = aim;
  plan.may_stop = false;
  return plan;
}

void simulate(const World& world, const Method& method, const Group& group,
              const std::vector<int>& lengths, std::vector<Tally>& tallies) {
  const Plan plan = method.plan.value_or(fixed_length(lengths.empty() ? 12 : lengths.back()));
  for (int i = 0; i < group.people; ++i) {
    const std::uint64_t seed = group.seed * 1000003 + static_cast<std::uint64_t>(i);
    const Person person = make_person(world, seed);
    Diagnosis run(world.believed, plan, seed);
    std::vector<int> list = method.form;
    if (!method.plan && list.empty()) {
      list = all_items(world.believed);
      Rng rng(seed ^ 0x5851f42d4c957f2dULL);
      shuffle(list, rng);
    }
    std::size_t verdict = 0;
    for (;;) {
      if (verdict < lengths.size() && static_cast<int>(run.asked().size()) == lengths[verdict]) {
        tallies[verdict++].add(run, person.state);
      }
      if (!lengths.empty() && verdict == lengths.size()) break;
      const int item = next_item(method, list, run);
      if (item < 0) break;
      run.ask(item);
      run.answer(item, answer(world, person, item));
    }
    if (lengths.empty()) tallies[0].add(run, person.state);
  }
}

std::vector<int> best_fixed_form(const Bank& bank, int items, Form form) {
  constexpr int k_people = 100;
  const World world{bank, bank, 0};
  std::vector<Person> people;
  std::vector<Diagnosis> runs;
  for (int i = 0; i < k_people; ++i) {
    people.push_back(make_person(world, 77000000 + static_cast<std::uint64_t>(i)));
    runs.emplace_back(bank, Plan{}, 0);
  }
  std::vector<int> left = allowed_items(bank, form);
  std::vector<int> chosen;
  for (int slot = 0; slot < items && !left.empty(); ++slot) {
    int best = -1;
    double most = -1;
    for (const int item : left) {
      double sum = 0;
      for (const Diagnosis& run : runs) sum += gain(run.worth_of(item), form);
      if (sum > most) {
        most = sum;
        best = item;
      }
    }
    chosen.push_back(best);
    std::erase(left, best);
    for (std::size_t i = 0; i < runs.size(); ++i) {
      runs[i].ask(best);
      runs[i].answer(best, answer(world, people[i], best));
    }
  }
  return chosen;
}

double repeated_share(const World& world, const Plan& plan, const Group& group) {
  double same = 0;
  double all = 0;
  for (int i = 0; i < group.people; ++i) {
    const std::uint64_t seed = group.seed * 1000003 + static_cast<std::uint64_t>(i);
    const Person person = make_person(world, seed);
    std::vector<int> before;
    for (std::uint64_t round = 0; round < 2; ++round) {
      Diagnosis run(world.believed, plan, seed * 2 + round);
      for (int item = run.next(before).item; item >= 0; item = run.next(before).item) {
        run.ask(item);
        run.answer(item, answer(world, person, item));
        if (round == 0) continue;
        ++all;
        same += std::find(before.begin(), before.end(), item) != before.end() ? 1 : 0;
      }
      before = run.asked();
    }
  }
  return same / all;
}

}  // namespace rehale::sim
