// How a shipped run asks, and what of it an educator can set. Must not know texts or screens.
#pragma once

#include <span>
#include <vector>

#include "core/check/events.h"
#include "core/mastery/diagnosis.h"

namespace rehale::check {

// Two questions beyond the least, so that habits which are no checklist's critical step, but the
// most often missed (breathing out, holding), are looked at too.
inline constexpr mastery::Plan k_plan{.fewest = 8, .near_recent = .6};

// How many questions can be set; 0 leaves it to the check.
inline constexpr int k_fewest_set = 6, k_most_set = k_plan.most;

// The plan of a run that starts with this event.
[[nodiscard]] mastery::Plan plan_of(const catalog::Family& family, const Event& begin);

// The family's own techniques among those wished for by id or by the shared habit, in its order.
[[nodiscard]] std::vector<Id> focus_of(const catalog::Family& family, std::span<const Id> wished);

// That a run can start so: questions in range, every focus a technique of the family, each once.
[[nodiscard]] bool can_be_set(const catalog::Family& family, const Event& begin);

}  // namespace rehale::check
