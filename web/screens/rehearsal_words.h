// What a run-through shows, in words. Must not know drawing.
#pragma once

#include <string>
#include <vector>

#include "core/rehearsal/account.h"
#include "web/kit/spans.h"
#include "web/screens/app.h"

namespace rehale::screens {

// "Shake it": a step's own words or, where it has none, its action's.
[[nodiscard]] const std::string& step_words(const App& app, const catalog::Id& step);

// "4", "1.2": seconds to the tenth.
[[nodiscard]] std::string seconds_words(const App& app, double s);

// "1.2 seconds. Aim for 3 to 5 seconds."
[[nodiscard]] std::string measured_words(const App& app, const rehearsal::Finding& finding);

// Up to two sentences on why a technique is to mend, the most telling first.
[[nodiscard]] std::vector<std::string> missed_lines(const App& app, const catalog::Id& technique);

// Doses breathed in and lost.
[[nodiscard]] std::vector<std::string> dose_lines(const App& app);

// A row of the picture of times for each finding that has one.
[[nodiscard]] std::vector<kit::Span> time_rows(const App& app);

}  // namespace rehale::screens
