// Pictures for screens: a family's drawing in a pose, or nothing yet while it is on its way.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// Still: choices, where several stand side by side.
[[nodiscard]] kit::DrawPicture scene_picture(const App& app, const catalog::Id& family,
                                             const std::vector<catalog::Id>& pose);

// The one big picture of a screen: its parts move from how they stood before. App must outlive it.
[[nodiscard]] kit::DrawPicture moving_picture(App& app, const catalog::Id& family,
                                              std::vector<catalog::Id> pose);

// The words for a pose list of the family being checked, pose by pose.
[[nodiscard]] std::string pose_words(const App& app, const std::vector<catalog::Id>& pose);

}  // namespace rehale::screens
