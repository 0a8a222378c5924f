// Errors as values: Result<T> is a value or an Error, never both, and is handled once.
// Must not know: content, screens, files.
#pragma once

#include <string>
#include <utility>

#include <tl/expected.hpp>

namespace rehale {

// What went wrong, in words a person can act on.
struct Error {
  std::string code;    // stable, kebab-case, for tests: "unknown-question"
  std::string where;   // file, JSON pointer, event number…: the place
  std::string detail;  // what is there and what would be right
};

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(std::string code, std::string where, std::string detail) {
  return tl::unexpected<Error>(Error{std::move(code), std::move(where), std::move(detail)});
}

}  // namespace rehale
