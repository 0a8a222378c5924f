// A run's log as JSON text and back: what rehale.exportRun() gives, and what a log file holds.
// Must not know what the answers mean; every number and length is bounded before it is used.
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/check/events.h"

namespace rehale::exchange {

inline constexpr std::size_t k_max_log_bytes = std::size_t{256} * 1024;
inline constexpr std::size_t k_max_log_events = 512;

// {"schema":1,"kind":"rehale-run","events":[{"what":"begin","at_ms":0,…},…]}
[[nodiscard]] std::string write_log(const check::Log& log);

// Errors: "log-too-long", "log-not-json", "log-shape", "log-truncated"; `where` is a JSON pointer.
[[nodiscard]] Result<check::Log> read_log(std::string_view text);

}  // namespace rehale::exchange
