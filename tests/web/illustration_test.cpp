// Drawings as the page draws them, on a draw list without a window: the four families as the
// compiler makes them from assets/, and texts that are cut or garbled.
#include "web/kit/illustration.h"

#include <gtest/gtest.h>
#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "tests/support/files.h"

namespace rehale::kit {
namespace {

const std::vector<std::string> k_families{"spray", "powder-lever", "powder-cover", "soft-mist"};

// Compiled once, by the compiler itself (node), into the system's place for such files.
const std::map<std::string, std::string>& compiled() {
  static const auto texts = [] {
    std::map<std::string, std::string> found;
    std::string out = testing::TempDir() + "rehale-scenes-XXXXXX";
    if (mkdtemp(out.data()) == nullptr) return found;
    const std::string root = REHALE_SOURCE_DIR;
    const std::string run =
        "node '" + root + "/ci/lib/scene.mjs' '" + root + "/assets' '" + out + "' >/dev/null";
    if (std::system(run.c_str()) != 0) return found;
    for (const auto& family : k_families) {
      if (auto text = support::read_file(out + "/families/" + family + "/scene.txt"))
        found[family] = *text;
    }
    if (std::system(("rm -r '" + out + "'").c_str()) != 0) found.clear();
    return found;
  }();
  return texts;
}

Scene scene_of(const std::string& family) {
  const auto text = compiled().find(family);
  EXPECT_NE(text, compiled().end()) << family << " was not compiled";
  if (text == compiled().end()) return {};
  auto scene = parse_scene(text->second);
  EXPECT_TRUE(scene) << family;
  return scene ? *std::move(scene) : Scene{};
}

// A draw list of its own, anti-aliased as on the page.
struct Sheet {
  Sheet() {
    shared.SetCircleTessellationMaxError(0.3F);
    shared.ClipRectFullscreen = {-8192, -8192, 8192, 8192};
    shared.InitialFlags = ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedFill;
    shared.InitialFringeScale = 1;
    list._ResetForNewFrame();
    list.PushClipRectFullScreen();
  }
  ImDrawListSharedData shared;
  ImDrawList list{&shared};
};

Pose pose_or_rest(const Scene& scene, const std::vector<std::string>& names) {
  auto pose = pose_of(scene, names);
  EXPECT_TRUE(pose);
  return pose ? *std::move(pose) : Pose{};
}

void expect_inside(const ImDrawList& list, Rect rect, const std::string& what) {
  ASSERT_GT(list.VtxBuffer.Size, 500) << what;
  float left = rect.x, top = rect.y, right = rect.x + rect.w, bottom = rect.y + rect.h;
  for (const ImDrawVert& vertex : list.VtxBuffer) {
    ASSERT_TRUE(std::isfinite(vertex.pos.x) && std::isfinite(vertex.pos.y)) << what;
    left = std::min(left, vertex.pos.x), right = std::max(right, vertex.pos.x);
    top = std::min(top, vertex.pos.y), bottom = std::max(bottom, vertex.pos.y);
  }
  EXPECT_EQ(left, rect.x) << what << " leaves its frame";
  EXPECT_EQ(top, rect.y) << what << " leaves its frame";
  EXPECT_EQ(right, rect.x + rect.w) << what << " leaves its frame";
  EXPECT_EQ(bottom, rect.y + rect.h) << what << " leaves its frame";
}

TEST(Illustration, every_pose_of_every_family_draws_inside_its_frame) {
  for (const auto& family : k_families) {
    const Scene scene = scene_of(family);
    for (const auto& named : scene.poses) {
      for (const Rect rect : {Rect{10, 20, 480, 360}, Rect{5, 5, 120, 90}}) {
        Sheet sheet;
        draw_scene(sheet.list, rect, scene, pose_or_rest(scene, {named.name}),
                   palette_of(Scheme::light));
        expect_inside(sheet.list, rect, family + "/" + named.name);
      }
    }
  }
}

TEST(Illustration, poses_in_between_draw_finite_vertices) {
  for (const auto& family : k_families) {
    const Scene scene = scene_of(family);
    const Pose rest = pose_or_rest(scene, {});
    for (const auto& named : scene.poses) {
      const Pose pose = pose_or_rest(scene, {named.name});
      for (const float t : {0.1F, 0.5F, 0.9F}) {
        Sheet sheet;
        draw_scene(sheet.list, {0, 0, 480, 360}, scene, between(rest, pose, t),
                   palette_of(Scheme::dark));
        for (const ImDrawVert& vertex : sheet.list.VtxBuffer) {
          ASSERT_TRUE(std::isfinite(vertex.pos.x) && std::isfinite(vertex.pos.y)) << named.name;
        }
      }
    }
  }
}

TEST(Illustration, four_pictures_fit_the_sixteen_bit_indices_of_one_draw_list) {
  for (const auto& family : k_families) {
    const Scene scene = scene_of(family);
    for (const auto& named : scene.poses) {
      Sheet sheet;
      draw_scene(sheet.list, {0, 0, 960, 720}, scene, pose_or_rest(scene, {named.name}),
                 palette_of(Scheme::light));
      EXPECT_LT(sheet.list.VtxBuffer.Size, 12'000) << family << "/" << named.name;
    }
  }
}

TEST(Illustration, every_cut_of_a_scene_is_told_and_never_taken) {
  const auto found = compiled().find("powder-lever");
  ASSERT_NE(found, compiled().end());
  const std::string& text = found->second;
  for (std::size_t length = 0; length < text.size(); length += 97) {
    const std::string cut(text.data(), length);  // of exactly this size, for the sanitizer
    EXPECT_FALSE(parse_scene(cut)) << length;
  }
  EXPECT_TRUE(parse_scene(text));
}

TEST(Illustration, a_changed_byte_never_reads_past_the_scene) {
  const auto found = compiled().find("soft-mist");
  ASSERT_NE(found, compiled().end());
  const std::string letters = "0 -9z(\n";
  for (std::size_t at = 0; at < found->second.size(); at += 61) {
    std::string text = found->second;
    text[at] = letters[at % letters.size()];
    const auto scene = parse_scene(text);
    if (!scene) continue;
    Sheet sheet;
    draw_scene(sheet.list, {0, 0, 100, 75}, *scene, pose_or_rest(*scene, {}),
               palette_of(Scheme::light));
  }
}

const std::string k_small =
    "rehale-scene 1\nview 0 0 1000 1000\n( box 0 500 500\ns b i 3 c 4 0 0 1000 0 0 1000 -1000 0\n"
    ")\n( lid 1 0 0\ns - i 2 o 2 0 0 100 0\n)\nstart rest\npose rest\npose go 0 0 500 500\n"
    "t 0 m 100 -200 r 900 z 2000 -500\nt 1 h 0\npose back\nt 0 r 0 a 10 20\nt 1 h 1\nend 2 3\n";

TEST(Illustration, reads_a_scene_written_by_hand) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  EXPECT_EQ(scene->view, (Rect{0, 0, 100, 100}));
  ASSERT_EQ(scene->parts.size(), 2U);
  EXPECT_EQ(scene->parts[1].name, "lid");
  EXPECT_TRUE(scene->parts[1].hidden);
  ASSERT_EQ(scene->shapes.size(), 2U);
  EXPECT_TRUE(scene->shapes[0].convex && scene->shapes[0].closed);
  EXPECT_EQ(scene->points[2], (Point{100, 100}));
}

TEST(Illustration, later_poses_win_and_keep_what_they_do_not_name) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  const Pose pose = pose_or_rest(*scene, {"go", "back"});
  EXPECT_EQ(pose.frame, (Rect{0, 0, 50, 50}));
  EXPECT_EQ(pose.parts[0].move, (Point{10, -20}));
  EXPECT_EQ(pose.parts[0].scale, (Point{2, -0.5F}));
  EXPECT_EQ(pose.parts[0].turn_deg, 0);
  EXPECT_EQ(pose.parts[0].about, (Point{1, 2}));
  EXPECT_FALSE(pose.parts[1].shown);
}

TEST(Illustration, an_unknown_pose_is_an_error_with_its_name) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  const auto pose = pose_of(*scene, {"go", "fly"});
  ASSERT_FALSE(pose);
  EXPECT_EQ(pose.error().code, "unknown-pose");
  EXPECT_EQ(pose.error().where, "fly");
}

TEST(Illustration, half_way_is_half_way_and_parts_cut_there) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  const Pose rest = pose_or_rest(*scene, {}), go = pose_or_rest(*scene, {"go"});
  const Pose half = between(rest, go, 0.5F);
  EXPECT_EQ(half.frame, (Rect{0, 0, 75, 75}));
  EXPECT_EQ(half.parts[0].move, (Point{5, -10}));
  EXPECT_EQ(half.parts[0].turn_deg, 45);
  EXPECT_TRUE(half.parts[1].shown);
  EXPECT_FALSE(between(rest, go, 0.49F).parts[1].shown);
}

// A square turned a quarter, twice as wide and half as high and mirrored, moved: corners by hand.
TEST(Illustration, a_part_is_sized_then_turned_about_its_point_then_moved) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  Pose pose = pose_or_rest(*scene, {"go"});
  pose.frame = {-100, -100, 400, 400};
  pose.parts[1].shown = false;
  Sheet sheet;
  draw_scene(sheet.list, {0, 0, 400, 400}, *scene, pose, palette_of(Scheme::light));
  float left = 1e9F, right = -1e9F, top = 1e9F, bottom = -1e9F;
  for (const ImDrawVert& vertex : sheet.list.VtxBuffer) {
    left = std::min(left, vertex.pos.x), right = std::max(right, vertex.pos.x);
    top = std::min(top, vertex.pos.y), bottom = std::max(bottom, vertex.pos.y);
  }
  // half sizes 25 by 100 about (60, 30), shown from -100: x 135…185, y 30…230; outline about 2 px
  // more
  EXPECT_NEAR(left, 135, 3);
  EXPECT_NEAR(right, 185, 3);
  EXPECT_NEAR(top, 30, 3);
  EXPECT_NEAR(bottom, 230, 3);
}

TEST(Illustration, garbled_lines_are_named) {
  const auto line_of = [](const std::string& from, const std::string& to) {
    std::string text = k_small;
    text.replace(text.find(from), from.size(), to);
    const auto scene = parse_scene(text);
    return scene ? "taken" : scene.error().code + " " + scene.error().where;
  };
  EXPECT_EQ(line_of("rehale-scene 1", "rehale-scene 2"), "scene-broken line 1");
  EXPECT_EQ(line_of("view 0 0 1000 1000", "view 0 0 0 1000"), "scene-broken line 2");
  EXPECT_EQ(line_of("s b i", "s q i"), "scene-broken line 4");
  EXPECT_EQ(line_of("c 4 0", "c 5 0"), "scene-broken line 4");
  EXPECT_EQ(line_of("c 4 0", "c 99999 0"), "scene-broken line 4");
  EXPECT_EQ(line_of(")\n", ")\n)\n"), "scene-broken line 6");
  EXPECT_EQ(line_of("t 0 m", "t 7 m"), "scene-broken line 12");
  EXPECT_EQ(line_of("start rest", "start sleep"), "scene-broken start");
  EXPECT_EQ(line_of("end 2 3", "end 2 4"), "scene-broken line 17");
  EXPECT_EQ(line_of("end 2 3\n", ""), "scene-cut line 17");
  EXPECT_EQ(line_of("end 2 3\n", "end 2 3\nmore\n"), "scene-broken after 'end'");
}

TEST(Illustration, an_empty_rectangle_draws_nothing) {
  const auto scene = parse_scene(k_small);
  ASSERT_TRUE(scene);
  Sheet sheet;
  draw_scene(sheet.list, {0, 0, 0, 100}, *scene, pose_or_rest(*scene, {}),
             palette_of(Scheme::light));
  EXPECT_EQ(sheet.list.VtxBuffer.Size, 0);
}

}  // namespace
}  // namespace rehale::kit
