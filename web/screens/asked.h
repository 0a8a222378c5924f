// A check that somebody asked for by a link (#a=): parts of other screens.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// The language that the link sets; "" when it sets none, or there is no such link.
[[nodiscard]] std::string asked_language();

// "?seed=N"; nothing when there is none, or it is no number.
[[nodiscard]] std::optional<std::uint64_t> seed_in_address();

// Who asks, until when, and that results are sealed; nothing when nobody asked.
void draw_asked_facts(App& app);

// "There are 8 questions…", as was set.
[[nodiscard]] std::string how_many(const App& app);

}  // namespace rehale::screens
