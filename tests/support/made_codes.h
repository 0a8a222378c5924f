// Codes made of the small good family of tests/fixtures: runs with every kind of answer, practices
// with little and with much in them. For the corpus of old versions and as seeds for the fuzzers.
#pragma once

#include <string>
#include <vector>

#include "core/check/run.h"

namespace rehale::support {

inline constexpr const char* k_ok_content = "0123456789abcdef";

[[nodiscard]] const check::Course& ok_course();

struct MadeCode {
  std::string code;
  std::string log;  // of results: write_log of the log as it must come back
};
// Codes of this version as they are still written; the same at every call.
[[nodiscard]] std::vector<MadeCode> made_codes(int version);

}  // namespace rehale::support
