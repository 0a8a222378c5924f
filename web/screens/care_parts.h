// What the two screens about one inhaler share: how its counter counts, and which numbers a
// leaflet may give. Must not know drawing.
#pragma once

#include <string>

#include "web/screens/app.h"

namespace rehale::screens {

// A number of the person's own leaflet, and the family's that it stands in for.
struct LeafletNumber {
  const char* id;      // care/told/<id>
  const char* number;  // in care.json
  std::optional<int> supply::Leaflet::*told;
  bool is_days = true;
};
inline constexpr LeafletNumber k_leaflet_numbers[] = {
    {"in-use", "in_use", &supply::Leaflet::in_use_days},
    {"prime-new", "prime_new", &supply::Leaflet::prime_new, false},
    {"prime-idle", "prime_idle", &supply::Leaflet::prime_idle, false},
    {"prime-idle-after", "prime_idle_after", &supply::Leaflet::prime_idle_after_days},
    {"clean-every", "clean_every", &supply::Leaflet::clean_every_days}};

// Sprays and mists: they may need sprays to the air, and their counters count puffs. Powders count
// what was loaded.
[[nodiscard]] bool is_sprayed(const catalog::Care& numbers);
[[nodiscard]] bool has_can(const catalog::Care& numbers);
[[nodiscard]] const char* counts_in(const catalog::Care& numbers);  // "puffs", "doses"
[[nodiscard]] double most_on_counter(const catalog::Care& numbers);

// "puff", "puffs"; "3 puffs". Units: those of units/ and "months", "inhalers".
[[nodiscard]] std::string unit_words(const App& app, int count, const std::string& unit);
[[nodiscard]] std::string counted(const App& app, int count, const std::string& unit);

}  // namespace rehale::screens
