// What a person told of one inhaler (counter, days, what their leaflet says) as a code for a link
// or a file, since browsers forget. Must not know clocks, screens or what follows from it.
//
// Version 1 is a CBOR list: family, day counted, left, doses a day, puffs a dose, full or null,
// new (0 or 1), then as days or null: opened, expiry, last used, last cleaned; then what the
// leaflet says or null: days in use, sprays when new, sprays after a break, that break in days,
// days from cleaning to cleaning.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/civil.h"
#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/supply/supply.h"

namespace rehale::exchange {

inline constexpr int k_care_version = 1;
inline constexpr int k_most_left = 1000, k_most_doses_a_day = 12, k_most_puffs = 10;
inline constexpr int k_most_a_day = 40;                       // as core/supply takes it
inline constexpr int k_most_sprays = 20, k_most_days = 1000;  // a leaflet's

struct CareState {
  catalog::Id family;
  Day counted = 0;          // the counter stood so on this day
  int left = 0;             // on the counter
  int doses_a_day = 1;      // 0: only as needed
  int puffs = 1;            // a dose
  std::optional<int> full;  // on the counter of a new one
  bool is_new = false;      // never used yet
  std::optional<Day> opened, expiry, used, cleaned;
  supply::Leaflet leaflet;
  friend bool operator==(const CareState&, const CareState&) = default;
};

// Errors: "care-shape", `where` naming the field.
[[nodiscard]] Result<std::string> write_care(const CareState& state);
// Errors: those of read_envelope and read_cbor, "code-shape", "care-shape".
[[nodiscard]] Result<CareState> read_care(std::string_view code);
// The same from what stands in the envelope.
[[nodiscard]] Result<CareState> unpack_care(std::span<const std::uint8_t> payload);

// A file of its own: {"schema":1,"kind":"rehale-care","care":"C1…"}; and beside a run's events, in
// the text that write_log gave.
[[nodiscard]] std::string care_file(const std::string& code);
[[nodiscard]] std::string with_care(std::string log, const std::string& code);

}  // namespace rehale::exchange
