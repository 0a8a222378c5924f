// The words and the picture for one thing to mend: those of the misconception behind it when one is
// held, else those of the technique. Must not draw.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// what: name, lacks, reason, dose, remedy.
[[nodiscard]] const std::string& mend_words(const App& app, int place, const char* what);

// How it looks when done right: the pose of a picture question about the technique; may be empty.
[[nodiscard]] std::vector<catalog::Id> mend_pose(const App& app, int place);

}  // namespace rehale::screens
