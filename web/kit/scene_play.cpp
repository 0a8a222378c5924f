#include "web/kit/scene_play.h"

#include <algorithm>
#include <utility>

#include "web/kit/state.h"

namespace rehale::kit {
namespace {

// Slow at both ends.
float eased(double t) {
  const auto x = static_cast<float>(std::clamp(t, 0.0, 1.0));
  return x * x * (3 - 2 * x);
}

}  // namespace

void play_scene(Ui& ui, Rect rect, const Scene& scene, const std::vector<std::string>& names,
                ScenePlay& play) {
  if (play.scene != &scene) play = {.scene = &scene};
  const auto progress = [&] { return (ui.now_ms() - play.started_ms) / k_motion_ms; };
  if (!play.begun || play.names != names) {
    if (auto wanted = pose_of(scene, names)) {
      play.from = play.begun ? between(play.from, play.to, eased(progress())) : *wanted;
      play.to = *std::move(wanted);
      play.started_ms =
          play.begun && !ui.reduced_motion() ? ui.now_ms() : ui.now_ms() - k_motion_ms;
      play.begun = true;
    }
    play.names = names;
  }
  if (!play.begun || ui.draw_list() == nullptr) return;
  if (progress() >= 1) {
    draw_scene(*ui.draw_list(), rect, scene, play.to, ui.palette());
    return;
  }
  draw_scene(*ui.draw_list(), rect, scene, between(play.from, play.to, eased(progress())),
             ui.palette());
  ui.state().want_frame = true;
}

}  // namespace rehale::kit
