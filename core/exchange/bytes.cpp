#include "core/exchange/bytes.h"

namespace rehale::exchange {

namespace {

constexpr std::string_view k_letters =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

constexpr int value_of(char letter) {
  if (letter >= 'A' && letter <= 'Z') return letter - 'A';
  if (letter >= 'a' && letter <= 'z') return letter - 'a' + 26;
  if (letter >= '0' && letter <= '9') return letter - '0' + 52;
  if (letter == '-') return 62;
  return letter == '_' ? 63 : -1;
}

}  // namespace

std::string to_base64url(std::span<const std::uint8_t> bytes) {
  std::string text;
  text.reserve((bytes.size() * 4 + 2) / 3);
  std::uint32_t held = 0;
  unsigned bits = 0;
  for (const std::uint8_t byte : bytes) {
    held = (held << 8U) | byte;
    bits += 8;
    for (; bits >= 6; bits -= 6) text += k_letters[(held >> (bits - 6)) & 63U];
  }
  if (bits > 0) text += k_letters[(held << (6 - bits)) & 63U];
  return text;
}

Result<Bytes> from_base64url(std::string_view text) {
  Bytes bytes;
  bytes.reserve(text.size() * 3 / 4);
  std::uint32_t held = 0;
  unsigned bits = 0;
  for (std::size_t n = 0; n < text.size(); ++n) {
    const int value = value_of(text[n]);
    if (value < 0) {
      return fail("code-letter", "letter " + std::to_string(n + 1),
                  "only letters, digits, - and _ can stand here; copy the whole code again");
    }
    held = (held << 6U) | static_cast<std::uint32_t>(value);
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes.push_back(static_cast<std::uint8_t>((held >> bits) & 255U));
    }
  }
  if (bits == 6 || (held & ((1U << bits) - 1U)) != 0) {
    return fail("code-length", "letter " + std::to_string(text.size()),
                "the code breaks off here; copy the whole of it again");
  }
  return bytes;
}

std::uint32_t crc32c(std::span<const std::uint8_t> bytes, std::uint32_t from) {
  std::uint32_t crc = ~from;
  for (const std::uint8_t byte : bytes) {
    crc ^= byte;
    for (int bit = 0; bit < 8; ++bit) {
      crc = (crc >> 1U) ^ ((crc & 1U) != 0 ? 0x82F63B78U : 0U);
    }
  }
  return ~crc;
}

}  // namespace rehale::exchange
