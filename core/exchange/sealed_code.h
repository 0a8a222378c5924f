// The envelope of a sealed result (HPKE, RFC 9180, done by the browser): what it is bound to, in
// the clear, and the sealed bytes. Must not know keys or ciphers.
//
// Version 1 is a CBOR list: assignment (16 bytes), content, encapsulated key (65 bytes), sealed
// bytes. `bound_bytes` goes into the seal as additional data, so that nothing of it can be changed.
#pragma once

#include <string>
#include <string_view>

#include "core/exchange/assignment_code.h"

namespace rehale::exchange {

inline constexpr int k_sealed_version = 1;
inline constexpr std::size_t k_max_sealed_bytes = 2048;

struct SealedResult {
  RandomId assignment{};
  std::string content;  // content id of the run inside
  PublicKey sender{};   // "enc" of RFC 9180
  Bytes sealed;         // what `bytes_to_seal` gave, encrypted, and the tag
  friend bool operator==(const SealedResult&, const SealedResult&) = default;
};

// "rehale-sealed-1", assignment, content: what the seal must be made and opened with.
[[nodiscard]] Bytes bound_bytes(const RandomId& assignment, std::string_view content);

// A result's code as the bytes that are sealed: its letter and version, then the bytes its other
// letters stand for. Leave ResultHead::assignment out of it: the seal carries and binds that.
// Errors: "code-shape".
[[nodiscard]] Result<Bytes> bytes_to_seal(std::string_view result_code);

// "encapsulated-key bound sealed", base64url each: a line for the page's openSealed
// (web/js/sealing.js), which gives the opened bytes as a line of base64url, or an empty one.
[[nodiscard]] std::string line_to_open(const SealedResult& sealed);

// The result that was sealed, from the opened bytes: its assignment is the one the seal is bound
// to. Errors: those of read_result, "sealed-other" (the answers are of other content than the seal
// is bound to, or name another assignment).
[[nodiscard]] Result<ReadResult> read_opened(const SealedResult& sealed,
                                             std::span<const std::uint8_t> opened);

// Errors: "code-shape" (content no name, too long, too little to hold a tag).
[[nodiscard]] Result<std::string> write_sealed(const SealedResult& sealed);
// Errors: those of read_envelope and read_cbor, "code-shape".
[[nodiscard]] Result<SealedResult> read_sealed(std::string_view code);

}  // namespace rehale::exchange
