// A content id in a code: the 16 hex digits of the page as 8 bytes, any other short name as text.
// Internal to core/exchange.
#pragma once

#include <string>

#include "core/exchange/fields.h"

namespace rehale::exchange {

[[nodiscard]] inline Json content_json(const std::string& content) {
  Bytes bytes;
  const auto digit = [](char c) {
    return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
  };
  if (content.size() != 16) return content;
  for (std::size_t n = 0; n < 16; n += 2) {
    const int high = digit(content[n]), low = digit(content[n + 1]);
    if (high < 0 || low < 0) return content;
    bytes.push_back(static_cast<std::uint8_t>(high * 16 + low));
  }
  return Json::binary(std::move(bytes));
}

[[nodiscard]] inline std::string read_content_name(Fields& fields) {
  if (fields.next_is_text()) return fields.name("content", 32);
  std::string hex;
  for (const std::uint8_t byte : fields.bytes("content", 8, 8)) {
    hex += "0123456789abcdef"[byte >> 4U];
    hex += "0123456789abcdef"[byte & 15U];
  }
  return hex;
}

}  // namespace rehale::exchange
