// Pictures for screens: a family's drawing in a pose, or nothing yet while it is on its way.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

[[nodiscard]] kit::DrawPicture scene_picture(const App& app, const catalog::Id& family,
                                             std::vector<catalog::Id> pose);

// The words for a pose list of the family being checked: the sentence of its last pose.
[[nodiscard]] const std::string& pose_words(const App& app, const std::vector<catalog::Id>& pose);

}  // namespace rehale::screens
