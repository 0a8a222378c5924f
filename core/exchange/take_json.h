// Run-throughs as JSON text and back, beside a run's events in the same text. Must not know what
// they show; every number and length is bounded before it is used.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/check/events.h"
#include "core/rehearsal/take.h"

namespace rehale::exchange {

inline constexpr std::size_t k_max_takes = 32;

// As write_log; with takes the object also has
// "rehearsals":[{"family":…,"content":…,"guided":false,"doses":1,
//                "acts":[{"step":"shake","start_ms":0,"end_ms":5100},…]},…]
[[nodiscard]] std::string write_log_with(const check::Log& log,
                                         const std::vector<rehearsal::Take>& takes);

// The rehearsals of such a text; none when it has none. Times and steps are checked by
// rehearsal::check_take. Errors: "log-too-long", "log-not-json", "log-shape"; `where` is a JSON
// pointer.
[[nodiscard]] Result<std::vector<rehearsal::Take>> read_takes(std::string_view text);

}  // namespace rehale::exchange
