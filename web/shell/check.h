// CHECK(condition, "why"): a broken invariant is a defect; the page says so and stops. Never for
// what a person or a file can cause: that is a Result.
#pragma once

namespace rehale::shell {
[[noreturn]] void check_failed(const char* why, const char* file, int line);
}  // namespace rehale::shell

#define CHECK(condition, why) \
  ((condition) ? static_cast<void>(0) : ::rehale::shell::check_failed(why, __FILE__, __LINE__))
