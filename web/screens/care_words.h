// What follows from what the person told, in words: one card a matter, each with its reason. Must
// not know drawing or clocks.
#pragma once

#include <string>
#include <vector>

#include "core/exchange/calendar.h"
#include "web/screens/care_parts.h"

namespace rehale::screens {

struct CareCard {
  std::string id, title;
  std::vector<std::string> lines;
  bool caution = false;
};

// Empty when the numbers do not fit together.
[[nodiscard]] std::vector<CareCard> care_cards(const App& app, Day today);

// The number a leaflet gave in place of the family's own.
[[nodiscard]] bool leaflet_differs(const App& app);
// One line a number of care.json: its value, what leaflets say, its source's key; then the
// sources.
[[nodiscard]] std::vector<std::string> source_lines(const App& app);
// Why a can is not floated, weighed, shaken.
[[nodiscard]] std::vector<std::string> refused_lines(const App& app);

// Cleaning and asking for a new one; none of what has no day.
[[nodiscard]] std::vector<exchange::Reminder> care_reminders(const App& app, Day today);

}  // namespace rehale::screens
