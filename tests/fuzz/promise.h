// What a target of the fuzzers holds its reader to: a promise that is not kept ends the program.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "core/base/result.h"
#include "tests/fuzz/targets.h"

namespace rehale::fuzz {

inline void promise(bool kept, const char* what) {
  if (kept) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

// Every error tells the way on.
inline void promise_told(const Error& error) {
  promise(!error.code.empty() && !error.detail.empty(), "an error says what would be right");
}

inline std::string_view text_of(Input input) {
  return {reinterpret_cast<const char*>(input.data()), input.size()};
}

}  // namespace rehale::fuzz
