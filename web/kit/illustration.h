// A family's drawing: read from the text that ci/lib/scene.mjs compiles, put into a pose, drawn
// with anti-aliased fills and outlines. Must not know widgets, screens or what a pose means.
//
// The text has one thing a line. Lengths are tenths of a drawing unit; a face is about 250 units.
//   rehale-scene 1
//   view X Y W H               what is seen when no pose says otherwise
//   ( NAME HIDDEN X Y          a part begins: hidden 0 or 1, the point it turns about
//   )                          and ends; parts nest
//   s FILL STROKE WIDTH KIND N X Y DX DY DX DY ...
//                              a shape: roles by letter, c convex, k concave, o open, N points
//   start NAME                 the pose of rest
//   pose NAME [X Y W H]        a pose, with its frame; its changes follow:
//   t PART [m X Y] [r TURN] [a X Y] [z WIDTH HEIGHT] [h HIDDEN]
//                              turn in tenths of a degree, size in thousandths
//   end PARTS POSES            counts, so that a cut file is noticed
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "web/kit/theme.h"
#include "web/shell/mirror_node.h"

struct ImDrawList;

namespace rehale::kit {

using shell::Rect;

// Fills and strokes by role; the palette decides colours.
enum class Paint : unsigned char { none, paper, body, shade, act, skin, wash, air, ink, soft };

struct Point {
  float x = 0, y = 0;
  friend bool operator==(const Point&, const Point&) = default;
};

// Where one part stands: p -> about + move + turn(scale(p - about)), inside the part that holds it.
struct Placement {
  Point move, about, scale{.x = 1, .y = 1};
  float turn_deg = 0;  // clockwise
  bool shown = true;
};

struct Scene {
  struct Part {
    std::string name;
    bool hidden = false;
    Point about;
  };
  struct Shape {
    Paint fill = Paint::none, stroke = Paint::none;
    float width = 0;  // px at 480 px across
    bool closed = false, convex = false;
    std::uint32_t first = 0, count = 0;  // into points
  };
  enum class Step : unsigned char { open_part, close_part, shape };
  struct Item {
    Step step = Step::shape;
    std::uint32_t index = 0;  // of the part or the shape
  };
  struct Change {
    std::uint32_t part = 0;
    std::optional<Point> move, about, scale;
    std::optional<float> turn_deg;
    std::optional<bool> hide;
  };
  struct NamedPose {
    std::string name;
    std::optional<Rect> frame;
    std::vector<Change> changes;
  };

  Rect view;  // drawing units
  std::vector<Part> parts;
  std::vector<Shape> shapes;
  std::vector<Point> points;
  std::vector<Item> items;  // in drawing order
  std::vector<NamedPose> poses;
  std::string start;
};

// Error codes: "scene-broken" (where: the line), "scene-cut" (the text ends too early).
Result<Scene> parse_scene(std::string_view text);

// A scene with every part placed. Plain data: keep it, do not make it anew each frame.
struct Pose {
  Rect frame;
  std::vector<Placement> parts;  // as many as the scene has
};

// The poses named, laid over the drawing at rest one after another: what a later one says of a
// part's move, turn, size or sight, and of the frame, wins. No names: the drawing at rest. Error
// code: "unknown-pose" (where: its name).
Result<Pose> pose_of(const Scene& scene, const std::vector<std::string>& names);

// t in 0…1. Movement is straight, t is eased by the caller; parts come and go at the middle.
Pose between(const Pose& from, const Pose& to, float t);

// Fits the pose's frame into the rectangle, centred, clipped to it. `pose` is one of this scene's.
void draw_scene(ImDrawList& list, Rect rect, const Scene& scene, const Pose& pose,
                const Palette& palette);

}  // namespace rehale::kit
