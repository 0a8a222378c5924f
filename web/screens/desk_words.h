// Words that several screens of the educator's desk use. Must not know drawing but for the filter.
#pragma once

#include <string>

#include "web/screens/app.h"

namespace rehale::screens {

// "list.txt, line 7: … (R1abc…)"
[[nodiscard]] std::string unread_words(const App& app, const exchange::Unread& item);

// How likely it is that the technique is there: "very likely", "likely"…
[[nodiscard]] const std::string& chance_words(const App& app, const cohort::Technique& technique);

// A technique of that family by its name; marked when it is a key step.
[[nodiscard]] std::string technique_name(const App& app, const catalog::Family& family,
                                         std::size_t technique);
[[nodiscard]] const std::string& family_name(const App& app, const catalog::Id& family);

// "2026-11-25", or that the day is not known.
[[nodiscard]] std::string day_words(const App& app, Day day);
// Five letters and digits that tell one result from another; no name, no order.
[[nodiscard]] std::string result_number(const cohort::Record& record);

// "No. 7F3A2, 2026-11-25. First check. Somebody helped."
[[nodiscard]] std::string result_words(const App& app, const cohort::Record& record);

struct FilterParts {
  bool families = true, every_family = false, sort = false;
};
// What to show: kind of device, first check or again, language, order. Changes the desk's filter.
void draw_desk_filter(App& app, FilterParts parts);

// Saves a text as a file, and tells how it went in desk.told.
void save_from_desk(App& app, const std::string& name, const std::string& text);

}  // namespace rehale::screens
