// A drawing that changes its pose: how long it moves (look.md: 300 ms, none with reduced motion)
// and that it then rests.
#include "web/kit/scene_play.h"

#include <gtest/gtest.h>

#include "tests/web/kit_rig.h"

namespace rehale {
namespace {

using rig::Role;

struct ScenePlay : testing::Test {
  kit::Scene scene = *kit::parse_scene(
      "rehale-scene 1\nview 0 0 1000 1000\n( box 0 500 500\ns b i 3 c 4 0 0 1000 0 0 1000 -1000 "
      "0\n)\n"
      "start rest\npose rest\npose go\nt 0 m 100 0\nend 1 2\n");
  kit::Scene other = *kit::parse_scene(
      "rehale-scene 1\nview 0 0 1000 1000\n( lid 0 500 500\ns b i 3 c 4 0 0 1000 0 0 1000 -1000 "
      "0\n)\n( box 0 500 500\ns b i 3 c 4 0 0 1000 0 0 1000 -1000 0\n)\n"
      "start rest\npose rest\nt 1 m 300 0\npose go\nend 2 2\n");
  bool shows_other = false;
  kit::ScenePlay play;
  std::vector<std::string> names{"rest"};
  std::string next = "go";

  void start(bool reduced_motion) {
    rig::open({.reduced_motion = reduced_motion}, [this](kit::Ui& ui) {
      kit::begin_screen(ui, {.id = "s", .title = "Title"});
      kit::picture(
          ui,
          {.id = "picture", .alternative = "A box.", .draw = [this](kit::Ui& in, kit::Rect rect) {
             kit::play_scene(in, rect, shows_other ? other : scene, names, play);
           }});
      kit::heading(ui, "ask", "What do you see?", kit::Heading::question);
      if (kit::end_screen(ui, {.main = {.id = "go", .label = "Go"}}) == kit::ActionPress::main)
        names = {next};
    });
  }
  // Milliseconds from the press of "Go" until nothing asks for a frame any more.
  double moves_ms() {
    const double before = rig::now();
    rig::press(rig::find(Role::button, "Go"));
    rig::settle();
    return rig::now() - before;
  }
};

TEST_F(ScenePlay, the_first_pose_stands_at_once) {
  start(false);
  EXPECT_EQ(play.to.parts[0].move.x, 0);
  EXPECT_EQ(rig::pass(1000), 0);
}

TEST_F(ScenePlay, a_new_pose_is_reached_in_300_ms_and_then_nothing_is_drawn) {
  start(false);
  const double took = moves_ms();
  EXPECT_GE(took, 300);
  EXPECT_LE(took, 450);  // the press itself takes a few frames
  EXPECT_EQ(play.to.parts[0].move.x, 10);
  EXPECT_EQ(rig::pass(1000), 0);
}

TEST_F(ScenePlay, with_reduced_motion_it_cuts) {
  start(true);
  EXPECT_LT(moves_ms(), 150);
  EXPECT_EQ(play.to.parts[0].move.x, 10);
}

// Two devices have poses of the same name.
TEST_F(ScenePlay, another_drawing_stands_at_once_in_its_own_pose) {
  start(false);
  shows_other = true;
  next = "rest";
  EXPECT_LT(moves_ms(), 150);
  ASSERT_EQ(play.to.parts.size(), other.parts.size());
  EXPECT_EQ(play.to.parts[1].move.x, 30);
}

TEST_F(ScenePlay, a_pose_it_does_not_have_leaves_the_last_one) {
  start(false);
  next = "fly";
  moves_ms();
  EXPECT_EQ(play.to.parts[0].move.x, 0);
  EXPECT_EQ(rig::pass(1000), 0);
}

}  // namespace
}  // namespace rehale
