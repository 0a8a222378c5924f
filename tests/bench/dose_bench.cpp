// How long one technique takes, and what its exp calls alone would: medians, one JSON line a task.
// With --allocations: how often 1,000 techniques ask for memory, as a number.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <new>
#include <vector>

#include "core/base/portable_math.h"
#include "core/dose/model.h"

namespace {

using Clock = std::chrono::steady_clock;
using Microseconds = std::chrono::duration<double, std::micro>;

template <class Task>
double median_us(Task task) {
  std::vector<double> times;
  for (int n = 0; n < 2000; ++n) task(n);  // warm: a WASM engine compiles
  for (int sample = 0; sample < 301; ++sample) {
    const auto start = Clock::now();
    for (int call = 0; call < 10; ++call) task(sample * 10 + call);
    times.push_back(Microseconds(Clock::now() - start).count() / 10);
  }
  std::nth_element(times.begin(), times.begin() + 150, times.end());
  return times[150];
}

// exp calls of one puff with constant flow, all of it during the breath (core/dose/sweep.cpp): 41
// sizes, each 20 in prepare(), 9 in flow(), 2 in each of 12 slices.
constexpr int k_exps = 41 * (20 + 9 + 2 * 12);

volatile double k_sink;
std::size_t asked_for_memory = 0;

int print_allocations() {
  using namespace rehale::dose;
  double sum = 0;
  const auto before = asked_for_memory;
  for (int n = 0; n < 1000; ++n) {
    Technique technique;
    technique.device = static_cast<Device>(n % k_devices);
    technique.flow_l_per_min = 20 + n % 70;
    const auto outcome = estimate(technique);
    if (outcome) sum += outcome->lung.likely;
  }
  k_sink = sum;
  std::printf("%zu\n", asked_for_memory - before);
  return sum > 0 ? 0 : 1;
}

}  // namespace

void* operator new(std::size_t size) {
  ++asked_for_memory;
  void* memory = std::malloc(size);
  if (memory == nullptr) std::abort();
  return memory;
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

int main(int argc, char**) {
  using namespace rehale::dose;
  if (argc > 1) return print_allocations();
  double sum = 0;
  const double puff = median_us([&sum](int n) {
    Technique technique;
    technique.flow_l_per_min = 20 + n % 70;
    const auto outcome = estimate(technique);
    if (outcome) sum += outcome->lung.likely;
  });
  const double exps = median_us([&sum](int n) {
    for (int i = 0; i < k_exps; ++i) sum += rehale::portable_exp(-.001 * ((n + i) % 4000));
  });
  k_sink = sum;
  std::printf("{\"task\":\"dose, one technique\",\"median_us\":%.3f}\n", puff);
  std::printf("{\"task\":\"dose, its %d exp calls alone\",\"median_us\":%.3f}\n", k_exps, exps);
  return 0;
}
