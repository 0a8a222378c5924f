// Bytes as text and back (base64url, RFC 4648 section 5, no padding) and a check value against
// slips of copying (CRC-32C). Must not know what the bytes mean. No defence against anybody.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace rehale::exchange {

using Bytes = std::vector<std::uint8_t>;

[[nodiscard]] std::string to_base64url(std::span<const std::uint8_t> bytes);

// Only what to_base64url gives: no padding, no spaces, no other letters, no stray bits at the end.
// Errors: "code-letter" (`where` is the position, counted from 1), "code-length".
[[nodiscard]] Result<Bytes> from_base64url(std::string_view text);

// CRC-32C (Castagnoli): reflected polynomial 0x82F63B78, start and final xor 0xFFFFFFFF (RFC 3720
// appendix B.4). Pass an earlier result as `from` to go on where it stopped.
[[nodiscard]] std::uint32_t crc32c(std::span<const std::uint8_t> bytes, std::uint32_t from = 0);

}  // namespace rehale::exchange
