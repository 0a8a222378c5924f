// The C library's strtod of the page (linked with --wrap=strtod): numbers as content has them go
// the short way, so that the long one need not travel before the first question.

#include <cstring>

#include "web/shell/short_decimal.h"

extern "C" {

double __real_strtod(const char* text, char** end);

double __wrap_strtod(const char* text, char** end) {
  const std::size_t length = std::strlen(text);
  const auto value = rehale::shell::read_short_decimal({text, length});
  if (!value) return __real_strtod(text, end);
  if (end != nullptr) *end = const_cast<char*>(text) + length;
  return *value;
}

}  // extern "C"
