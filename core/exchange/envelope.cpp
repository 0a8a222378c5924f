#include "core/exchange/envelope.h"

#include <utility>

namespace rehale::exchange {

namespace {

// Kind, version, four letters of check value at least.
constexpr std::size_t k_least_letters = 12;

bool is_code_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_';
}

bool is_kind(char c) { return c == 'R' || c == 'A' || c == 'S' || c == 'C'; }

const char* name_of(char kind) {
  switch (kind) {
    case 'R':
      return "a result";
    case 'A':
      return "a practice that was set";
    case 'S':
      return "a sealed result";
    case 'C':
      return "the numbers of one inhaler";
    default:
      return "no code of the self-check";
  }
}

std::uint32_t check_of(char kind, char version, std::span<const std::uint8_t> payload) {
  const std::uint8_t head[2] = {static_cast<std::uint8_t>(kind),
                                static_cast<std::uint8_t>(version)};
  return crc32c(payload, crc32c(head));
}

}  // namespace

std::string write_envelope(Kind kind, int version, Bytes payload) {
  const char letter = static_cast<char>(kind);
  const char digit = static_cast<char>('0' + version);
  const std::uint32_t check = check_of(letter, digit, payload);
  for (unsigned n = 4; n-- > 0;) {
    payload.push_back(static_cast<std::uint8_t>((check >> (8 * n)) & 255U));
  }
  return std::string{letter, digit} + to_base64url(payload);
}

Result<Envelope> read_envelope(std::string_view code, Kind kind, int newest) {
  const char letter = static_cast<char>(kind);
  if (code.size() > k_max_code_letters) {
    return fail("code-too-long", "letter " + std::to_string(k_max_code_letters),
                "this is longer than any code of the self-check");
  }
  if (code.empty() || code[0] != letter) {
    return fail("code-kind", "letter 1",
                std::string("expected ") + name_of(letter) + ", which starts with " + letter +
                    "; this is " + name_of(code.empty() ? ' ' : code[0]));
  }
  if (code.size() < k_least_letters) {
    return fail("code-length", "letter " + std::to_string(code.size()),
                "the code breaks off here; copy the whole of it again");
  }
  if (code[1] < '1' || code[1] > '9') {
    return fail("code-kind", "letter 2", "expected the version of the code, 1 to 9");
  }
  if (code[1] - '0' > newest) {
    return fail("code-newer", "letter 2", "a newer page wrote this code; load the page anew");
  }
  auto bytes = from_base64url(code.substr(2));
  if (!bytes) return tl::unexpected(bytes.error());
  std::uint32_t told = 0;
  const std::size_t end = bytes->size() - 4;
  for (std::size_t n = end; n < bytes->size(); ++n) told = (told << 8U) | (*bytes)[n];
  bytes->resize(end);
  if (told != check_of(code[0], code[1], *bytes)) {
    return fail("code-check", "", "a letter was lost or changed on the way; copy the code again");
  }
  return Envelope{kind, code[1] - '0', *std::move(bytes)};
}

std::vector<Found> find_codes(std::string_view text) {
  std::vector<Found> found;
  std::size_t line = 1;
  for (std::size_t at = 0; at < text.size();) {
    if (!is_code_letter(text[at])) {
      if (text[at++] == '\n') ++line;
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && is_code_letter(text[end])) ++end;
    const std::string_view word = text.substr(at, end - at);
    if (word.size() >= k_least_letters && is_kind(word[0]) && word[1] >= '1' && word[1] <= '9') {
      found.push_back({static_cast<Kind>(word[0]), word, line});
    }
    at = end;
  }
  return found;
}

}  // namespace rehale::exchange
