#include "web/screens/pictures.h"

#include "web/kit/scene_play.h"

namespace rehale::screens {

kit::DrawPicture scene_picture(const App& app, const catalog::Id& family,
                               const std::vector<catalog::Id>& pose) {
  auto scene = app.content.scene(family);
  if (!scene) return [](kit::Ui&, kit::Rect) {};  // on its way: room is kept, words stand already
  auto placed = kit::pose_of(*scene, pose);
  if (!placed) return [](kit::Ui&, kit::Rect) {};
  return [scene, placed = *std::move(placed)](kit::Ui& ui, kit::Rect rect) {
    kit::draw_scene(*ui.draw_list(), rect, *scene, placed, ui.palette());
  };
}

kit::DrawPicture moving_picture(App& app, const catalog::Id& family,
                                std::vector<catalog::Id> pose) {
  auto scene = app.content.scene(family);
  if (!scene) return [](kit::Ui&, kit::Rect) {};
  return [&app, scene, pose = std::move(pose)](kit::Ui& ui, kit::Rect rect) {
    kit::play_scene(ui, rect, *scene, pose, app.play);
  };
}

std::string pose_words(const App& app, const std::vector<catalog::Id>& pose) {
  std::string words;
  for (const catalog::Id& name : pose) {
    const std::string& sentence = app.tell("poses/" + name);
    if (!words.empty() && !sentence.empty()) words += ' ';
    words += sentence;
  }
  return words;
}

}  // namespace rehale::screens
