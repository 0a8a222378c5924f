// A drawing that changes from pose to pose: parts move in 300 ms, eased; with reduced motion they
// cut. Must not know what a pose means.
#pragma once

#include <string>
#include <vector>

#include "web/kit/illustration.h"
#include "web/kit/ui.h"

namespace rehale::kit {

// The caller keeps this, one a picture; start with {}.
struct ScenePlay {
  const Scene* scene = nullptr;    // another one starts anew: its parts are not these
  std::vector<std::string> names;  // shown, or moved to
  Pose from, to;
  double started_ms = 0;
  bool begun = false;
};

// Draws the scene in the poses named, moving there from whatever was shown before. The first call
// does not move. Names the scene does not have: what was shown stays (content is checked before it
// is shown).
void play_scene(Ui& ui, Rect rect, const Scene& scene, const std::vector<std::string>& names,
                ScenePlay& play);

}  // namespace rehale::kit
