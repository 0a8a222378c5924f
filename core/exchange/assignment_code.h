// A practice that an educator sets, as a code for a link: what to practise, until when, and to whom
// the result goes. Must not know clocks (today comes in) or chance (the id comes in).
//
// Version 1 is a CBOR list: families, focus techniques, questions, language or null, due day or
// null, expiry day or null, id (16 bytes), public key (65 bytes) or null.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/check/plan.h"
#include "core/exchange/result_code.h"

namespace rehale::exchange {

inline constexpr int k_assignment_version = 1;
inline constexpr std::size_t k_most_families = 12, k_most_focus = 16;
// 0 leaves it to the check.
inline constexpr int k_fewest_asked = check::k_fewest_set, k_most_asked = check::k_most_set;

// An uncompressed point of P-256: 0x04, x, y (RFC 9180 section 7.1.1).
using PublicKey = std::array<std::uint8_t, 65>;

struct Assignment {
  std::vector<catalog::Id> families;  // at least one, each once
  std::vector<catalog::Id> focus;     // techniques of these families, or shared ones; may be empty
  int questions = 0;                  // 0, or k_fewest_asked … k_most_asked
  std::string language;               // "": as the person likes
  std::optional<Day> due;             // asked to be done by the end of this day
  std::optional<Day> expires;         // not taken after this day; not before `due`
  RandomId id{};
  std::optional<PublicKey> key;  // results are sealed for its owner
  friend bool operator==(const Assignment&, const Assignment&) = default;
};

// Errors: "assignment-shape", `where` naming the field.
[[nodiscard]] Result<std::string> write_assignment(const Assignment& assignment);

// Errors: those of read_envelope and read_cbor, "code-shape", "assignment-shape".
[[nodiscard]] Result<Assignment> read_assignment(std::string_view code);

// That this page has every family named. Errors: "content-other".
[[nodiscard]] Result<void> check_assignment(const Assignment& assignment,
                                            const catalog::Library& library);

enum class Timing : unsigned char { in_time, after_due, expired };
[[nodiscard]] Timing timing_of(const Assignment& assignment, Day today);

}  // namespace rehale::exchange
