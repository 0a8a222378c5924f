// What all codes share: a letter for the kind, a digit for the version, base64url of the bytes, of
// which the last four are CRC-32C over kind, version and the bytes before. Codes can stand in a
// link behind '#', in a QR code, in a message. Must not know what is inside.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/bytes.h"

namespace rehale::exchange {

// The longest code that is looked at; what we write is far shorter (see result_code.h).
inline constexpr std::size_t k_max_code_letters = 4096;

enum class Kind : char { result = 'R', assignment = 'A', sealed = 'S', care = 'C' };

struct Envelope {
  Kind kind = Kind::result;
  int version = 0;  // 1-9
  Bytes payload;
};

[[nodiscard]] std::string write_envelope(Kind kind, int version, Bytes payload);

// Checks length, letters and check value; takes any version that we may ever have written up to
// `newest`. Errors: "code-too-long", "code-kind" (another kind of code, or none), "code-newer" (a
// later page wrote it), "code-letter", "code-length", "code-check" (a letter was lost or changed).
[[nodiscard]] Result<Envelope> read_envelope(std::string_view code, Kind kind, int newest);

// Codes in a text that somebody pasted: links, mails, one a line, whatever stands between them.
// They may still turn out broken when read.
struct Found {
  Kind kind = Kind::result;
  std::string_view code;  // part of the text
  std::size_t line = 1;   // where it starts, counted from 1
};
[[nodiscard]] std::vector<Found> find_codes(std::string_view text);

}  // namespace rehale::exchange
