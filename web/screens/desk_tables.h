// The group's tables as rows of words and bars, and as CSV. Must not know drawing.
#pragma once

#include <string>

#include "web/kit/bar_table.h"
#include "web/screens/app.h"

namespace rehale::screens {

// Of the family and filter on show. Before and after, and questions, are of all checks of the
// family: the same people, and enough answers, are needed.
[[nodiscard]] kit::BarTable teach_table(const App& app);
[[nodiscard]] kit::BarTable change_table(const App& app);
[[nodiscard]] kit::BarTable items_table(const App& app);

[[nodiscard]] std::string teach_csv(const App& app);  // the order, with what it goes by
[[nodiscard]] std::string techniques_csv(const App& app);
[[nodiscard]] std::string change_csv(const App& app);
[[nodiscard]] std::string items_csv(const App& app);
[[nodiscard]] std::string results_csv(const App& app);  // one row a result

}  // namespace rehale::screens
