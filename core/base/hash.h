// FNV-1a, 64 bits: names bytes (content ids, build checks). Not a defence against anybody.
// Must not know: what the bytes mean.
// Rule: Fowler, Noll, Vo; draft-eastlake-fnv (offset basis and prime of the 64-bit variant).
#pragma once

#include <cstdint>
#include <string_view>

namespace rehale {

inline constexpr std::uint64_t k_fnv_start = 0xcbf29ce484222325ULL;

// Pass an earlier result as `from` to go on where it stopped: fnv1a("ab") == fnv1a("b",
// fnv1a("a")).
[[nodiscard]] constexpr std::uint64_t fnv1a(std::string_view bytes,
                                            std::uint64_t from = k_fnv_start) {
  std::uint64_t hash = from;
  for (const char byte : bytes) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 0x100000001b3ULL;
  }
  return hash;
}

}  // namespace rehale
