#include "core/rehearsal/take.h"

#include <cmath>
#include <string>

#include "core/catalog/lookup.h"

namespace rehale::rehearsal {
namespace {

using catalog::Family;
using catalog::RunStep;

struct Ends {
  double of_part[2] = {0, 0};
  [[nodiscard]] double& operator[](catalog::Part part) {
    return of_part[static_cast<std::size_t>(part)];
  }
};

// What is odd about this act by itself; nullptr: nothing.
const char* odd_times(const Act& act) {
  if (!std::isfinite(act.start_ms) || !std::isfinite(act.end_ms)) return "a time is no number";
  if (act.start_ms < 0) return "it starts before the run-through does";
  if (act.end_ms < act.start_ms) return "it ends before it starts";
  if (act.end_ms > k_longest_take_ms) return "a run-through takes no longer than an hour";
  return nullptr;
}

}  // namespace

Result<void> check_take(const Family& family, const Take& take) {
  if (take.family != family.id || take.doses < 1 || take.doses > 2)
    return fail("take-mismatch", "take", "expected one or two doses of " + family.id);
  if (take.acts.size() > k_most_acts)
    return fail("too-many-acts", "take", "at most " + std::to_string(k_most_acts));
  Ends ends;
  double last_start = 0;
  for (std::size_t n = 0; n < take.acts.size(); ++n) {
    const Act& act = take.acts[n];
    const std::string where = "act " + std::to_string(n);
    const RunStep* step = catalog::find(family.run_through.steps, act.step);
    if (step == nullptr)
      return fail("unknown-step", where, "the run-through has no step \"" + act.step + "\"");
    if (const char* odd = odd_times(act); odd != nullptr) return fail("act-time", where, odd);
    if (act.end_ms - act.start_ms > k_longest_act_ms)
      return fail("act-too-long", where, "one thing takes no longer than ten minutes");
    if (act.start_ms < last_start)
      return fail("acts-out-of-order", where, "it starts before the act ahead of it");
    if (act.start_ms < ends[step->part])
      return fail("acts-overlap", where, "hands and breath each do one thing at a time");
    last_start = act.start_ms;
    ends[step->part] = act.end_ms;
  }
  return {};
}

std::vector<Act> without_slips(const Family& family, const std::vector<Act>& acts) {
  std::vector<Act> joined;
  int last[2] = {-1, -1};  // of each part: its place in `joined`
  for (const Act& act : acts) {
    const RunStep* step = catalog::find(family.run_through.steps, act.step);
    int& before = last[step != nullptr ? static_cast<std::size_t>(step->part) : 0];
    if (before >= 0) {
      Act& earlier = joined[static_cast<std::size_t>(before)];
      const bool slip = act.start_ms - earlier.end_ms <= k_slip_ms;
      if (slip && earlier.step == act.step && !act.skipped && !earlier.skipped) {
        earlier.end_ms = act.end_ms;
        continue;
      }
    }
    before = static_cast<int>(joined.size());
    joined.push_back(act);
  }
  return joined;
}

}  // namespace rehale::rehearsal
