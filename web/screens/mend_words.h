// The words and the picture for one thing to mend: those of the misconception behind it when one is
// held, else those of the technique. Must not draw.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// what: name, lacks, reason, dose, remedy.
[[nodiscard]] const std::string& mend_words(const App& app, int place, const char* what);

// Habits behind the things to mend, as the dose model knows them: the rule that is held, else the
// technique.
[[nodiscard]] const catalog::Id& habit_of(const App& app, int place);

// How it looks when done right: the pose of a picture question about the technique; may be empty.
[[nodiscard]] std::vector<catalog::Id> mend_pose(const App& app, int place);

}  // namespace rehale::screens
