// Which steps stand on screen next in a run-through: the sensible ones, and tempting others, so
// that the pads never give the order away. Must not know widgets.
#pragma once

#include <vector>

#include "core/rehearsal/take.h"

namespace rehale::rehearsal {

inline constexpr std::size_t k_most_pads = 5, k_fewest_pads = 4;

struct Offer {
  std::vector<Id> pads;  // at most k_most_pads, in the order of the content
  Id next;               // what the guide would do now; empty: all is done
};

// After these acts (well formed; one still running may end in the future). On offer: the next two
// wanted steps, up to two that were passed over while a dose is still to come, lures whose window
// is open, the latest opened first, and where these are fewer than k_fewest_pads, later wanted
// steps.
[[nodiscard]] Offer offer_after(const catalog::Family& family, const Take& take);

}  // namespace rehale::rehearsal
