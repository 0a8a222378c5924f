// How long the diagnosis takes: medians, one JSON line a task. Peers for the same run:
// tests/bench/mastery_numpy.py, tests/bench/jscat.mjs (facts/diagnosis.md section 5).
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <utility>
#include <vector>

#include "core/base/rng.h"
#include "core/mastery/diagnosis.h"

namespace {

using namespace rehale;
using namespace rehale::mastery;

using Clock = std::chrono::steady_clock;
using Microseconds = std::chrono::duration<double, std::micro>;

// Median time of one call, in microseconds, over 301 samples. A sample takes about half a
// millisecond, so that few are broken off by other work on the machine; a WASM engine is given time
// to compile.
template <class Task>
double median_us(Task task) {
  const auto begin = Clock::now();
  int warmed = 0;
  while (Microseconds(Clock::now() - begin).count() < 3e5) task(warmed++);
  const int calls = std::max(1, static_cast<int>(500 * warmed / 3e5));
  std::vector<double> times;
  for (int sample = 0; sample < 301; ++sample) {
    const auto start = Clock::now();
    for (int call = 0; call < calls; ++call) task(call);
    times.push_back(Microseconds(Clock::now() - start).count() / calls);
  }
  std::nth_element(times.begin(), times.begin() + 150, times.end());
  return times[150];
}

void report(const char* task, double us) {
  std::printf("{\"task\":\"%s\",\"median_us\":%.3f}\n", task, us);
}

Model random_model(int techniques, int misconceptions) {
  std::vector<TechniqueSpec> list(static_cast<std::size_t>(techniques));
  for (std::size_t k = 0; k < list.size(); ++k) {
    list[k].critical = k < 5;
    list[k].error_rate = .2 + .05 * static_cast<double>(k);
  }
  std::vector<MisconceptionSpec> held(static_cast<std::size_t>(misconceptions));
  for (std::size_t b = 0; b < held.size(); ++b) held[b].rules_out = static_cast<int>(b);
  auto model = make_model(People{list, held});
  if (!model) std::abort();
  return std::move(*model);
}

// `count` items of four options over `touched` techniques each; 0: the reference mix (55 need one,
// 33 two, 12 three).
Bank random_bank(int techniques, int misconceptions, int count, int touched) {
  Rng rng(5);
  Bank bank{random_model(techniques, misconceptions), {}};
  for (int i = 0; i < count; ++i) {
    const int wanted = touched > 0 ? touched : i < 55 ? 1 : i < 88 ? 2 : 3;
    Bits mask = 0;
    for (int left = wanted; left > 0;) {
      const Bits one = bit(static_cast<int>(rng.below(static_cast<std::uint64_t>(techniques))));
      if ((mask & one) != 0) continue;
      mask |= one;
      --left;
    }
    std::vector<double> rows(std::size_t{4} << static_cast<unsigned>(wanted));
    for (double& chance : rows) chance = rng.uniform(.02, 1);
    auto piece = make_piece(mask, 4, std::move(rows));
    if (!piece) std::abort();
    Item item;
    item.pieces.push_back(std::move(*piece));
    item.kind = i;
    bank.items.push_back(std::move(item));
  }
  return bank;
}

// Zeta transform and the index of every item: all that choosing needs.
double choose(const Bank& bank, SupersetSums& sums, const Posterior& posterior) {
  sums.sum(posterior.states());
  double best = 0;
  for (const Item& item : bank.items) {
    best = std::max(best, worth(bank.model, sums, item).decision);
  }
  return best;
}

void time_bank(const Bank& bank, const char* update, const char* select, const char* next) {
  Posterior posterior(bank.model);
  SupersetSums sums;
  double kept = 0;
  if (update != nullptr) {
    report(update, median_us([&](int call) {
             const std::size_t item = static_cast<std::size_t>(call) % bank.items.size();
             kept += posterior.update(bank.items[item].pieces[0], call % 4);
             if (call % 8 == 7) posterior = Posterior(bank.model);
           }));
  }
  report(select, median_us([&](int) { kept += choose(bank, sums, posterior); }));
  if (next != nullptr) {
    Diagnosis run(bank, Plan{}, 1);
    report(next, median_us([&](int) {
             sums.sum(posterior.states());  // as after an answer
             kept += run.next().item;
           }));
  }
  if (kept < 0) std::puts("");  // so that nothing above is optimised away
}

}  // namespace

int main() {
  time_bank(random_bank(12, 0, 100, 0), "update 4096 states", "select 100 items, reference mix",
            "next question, reference mix");
  time_bank(random_bank(12, 0, 100, 4), nullptr, "select 100 items of 16 groups", nullptr);
  time_bank(random_bank(12, 4, 100, 0), "update 65536 states", "select 100 items, 65536 states",
            "next question, 65536 states");
  return 0;
}
