// CBOR (RFC 8949) by nlohmann_json behind bounds: nothing is parsed before its size, depth and
// number of items are known to be small. Internal to core/exchange.
#pragma once

#include <span>

#include <nlohmann/json.hpp>

#include "core/exchange/bytes.h"

namespace rehale::exchange {

using Json = nlohmann::ordered_json;

struct CborBounds {
  std::size_t bytes = 4096;
  std::size_t items = 2048;  // values of every kind, counted one by one
  int depth = 4;             // lists within lists
};

[[nodiscard]] Bytes write_cbor(const Json& value);

// Exactly one value, nothing behind it. Tags are refused, and so are simple values other than
// false, true and null. Errors: "code-too-long", "code-truncated", "code-shape"; `where` is
// "byte N".
[[nodiscard]] Result<Json> read_cbor(std::span<const std::uint8_t> bytes, CborBounds bounds = {});

}  // namespace rehale::exchange
