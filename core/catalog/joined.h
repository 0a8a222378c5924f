// Words put together for messages and pointers, in one call.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace rehale::catalog {

using Words = std::initializer_list<std::string_view>;

[[nodiscard]] std::string joined(Words words);

}  // namespace rehale::catalog
