// How long a run-through takes to be folded into what it shows: medians, one JSON line a task.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "core/rehearsal/account.h"
#include "core/rehearsal/offer.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using Clock = std::chrono::steady_clock;
using Microseconds = std::chrono::duration<double, std::micro>;

// Two puffs with a spray, done well: 17 acts, the most a shipped run-through wants.
rehearsal::Take two_puffs() {
  rehearsal::Take take{"spray", "c", false, 2, {}};
  double now = 0;
  for (const auto& id : support::shipped_family("spray").run_through.twice) {
    const bool press = id == "press";
    const double at = press ? take.acts.back().start_ms + 500 : now + 600;
    const double length = press ? 0 : 4000;
    take.acts.push_back({id, at, at + length});
    now = std::max(now, at + length);
  }
  return take;
}

template <class Task>
double median_us(Task task) {
  std::vector<double> times;
  for (int n = 0; n < 200; ++n) task();  // warm: a WASM engine compiles
  for (int sample = 0; sample < 301; ++sample) {
    const auto start = Clock::now();
    for (int call = 0; call < 5; ++call) task();
    times.push_back(Microseconds(Clock::now() - start).count() / 5);
  }
  std::nth_element(times.begin(), times.begin() + 150, times.end());
  return times[150];
}

volatile std::size_t k_sink;

}  // namespace

int main() {
  const auto& family = support::shipped_family("spray");
  const auto take = two_puffs();
  std::size_t sum = 0;
  const double fold = median_us([&] {
    const auto account = rehearsal::account_of(family, take);
    sum += account ? account->findings.size() : 0;
  });
  const double offer = median_us([&] { sum += rehearsal::offer_after(family, take).pads.size(); });
  k_sink = sum;
  std::printf("{\"task\":\"run-through of two puffs, folded\",\"median_us\":%.3f}\n", fold);
  std::printf("{\"task\":\"run-through, what is on offer next\",\"median_us\":%.3f}\n", offer);
  return 0;
}
