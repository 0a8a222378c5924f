// What the person told of the inhaler in their hand, and what the screens about it keep. Screen
// state only: days are worked out by core/supply.
#pragma once

#include <optional>
#include <string>

#include "core/catalog/care.h"
#include "core/exchange/care_code.h"

namespace rehale::screens {

enum class Where : unsigned char;  // web/screens/app.h

struct Care {
  exchange::CareState told;
  std::optional<exchange::CareState> before;  // as it came back from an earlier day
  bool known = false;      // the person said so, or it came back: there are dates to show
  bool recounted = false;  // they looked at the counter again since it came back
  bool has_used = false;   // they know the day of the last use
  bool leaflet_open = false, sources_open = false, ways_open = false;
  std::string message;  // path of what the last press did; empty: nothing pressed
  Where back{};         // where the person came from
};

// As the person would find a new one of this family; nothing told yet.
[[nodiscard]] exchange::CareState fresh_care(const catalog::Care& numbers, Day today);

// Puffs or doses a day as prescribed; 0: only as needed.
[[nodiscard]] int a_day(const exchange::CareState& told);
// What the counter should show on `today`, had it been used as prescribed since it was counted.
[[nodiscard]] int by_plan(const exchange::CareState& told, Day today);

// Takes over what came back from an earlier visit: as counted then, less what is due since.
void take_back(Care& care, const exchange::CareState& told, Day today);

}  // namespace rehale::screens
