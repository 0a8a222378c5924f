#include "web/kit/illustration.h"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace rehale::kit {
namespace {

constexpr float k_full_px = 480;  // width at which stroke widths are as written…
constexpr float k_full_height_px = 360;
constexpr float k_least_stroke = 0.5F;  // …and the part of them that is left on small pictures
constexpr float k_corner_cos = 0.8F;    // a bend sharper than this (37 degrees) gets a round joint
constexpr std::size_t k_deepest = 16;   // parts inside parts

// x' = a x + c y + e; y' = b x + d y + f
struct Matrix {
  float a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  ImVec2 apply(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
  bool mirrors() const { return a * d - b * c < 0; }
};

Matrix operator*(const Matrix& m, const Matrix& n) {
  return {m.a * n.a + m.c * n.b, m.b * n.a + m.d * n.b,       m.a * n.c + m.c * n.d,
          m.b * n.c + m.d * n.d, m.a * n.e + m.c * n.f + m.e, m.b * n.e + m.d * n.f + m.f};
}

Matrix matrix_of(const Placement& at) {
  const float turn = at.turn_deg * std::numbers::pi_v<float> / 180.0F;
  const float cos = std::cos(turn), sin = std::sin(turn);
  const Matrix turned{cos * at.scale.x, sin * at.scale.x,       -sin * at.scale.y,
                      cos * at.scale.y, at.about.x + at.move.x, at.about.y + at.move.y};
  return turned * Matrix{1, 0, 0, 1, -at.about.x, -at.about.y};
}

ImU32 colour_of(Paint paint, const Palette& palette) {
  const auto packed = [](Colour c) { return IM_COL32(c.r, c.g, c.b, 255); };
  switch (paint) {
    case Paint::none:
      return 0;
    case Paint::paper:
      return packed(palette.paper);
    case Paint::body:
      return packed(palette.device);
    case Paint::shade:
      return packed(palette.device_shade);
    case Paint::act:
      return packed(palette.main);
    case Paint::skin:
      return packed(palette.skin);
    case Paint::wash:
      return packed(palette.highlight);
    case Paint::air:
      return packed(palette.air);
    case Paint::ink:
      return packed(palette.ink);
    case Paint::soft:
      return packed(palette.soft_ink);
  }
  return 0;
}

bool bends(const ImVec2& before, const ImVec2& here, const ImVec2& after) {
  const float ux = here.x - before.x, uy = here.y - before.y;
  const float vx = after.x - here.x, vy = after.y - here.y;
  const float lengths = std::sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  return ux * vx + uy * vy < k_corner_cos * lengths;
}

// One outline with round joints and ends. Dear ImGui's own joints are pointed, so the line is cut
// at sharp bends and a dot of its width is put there.
struct Pen {
  ImDrawList& list;
  ImU32 colour;
  float width;

  void dot(const ImVec2& at) const { list.AddCircleFilled(at, width / 2, colour); }
  void run(const ImVec2* points, int count, ImDrawFlags flags) const {
    if (count >= 2) list.AddPolyline(points, count, colour, flags, width);
  }
  void open_line(const ImVec2* points, int count) const {
    int from = 0;
    dot(points[0]);
    for (int i = 1; i < count; ++i) {
      if (i + 1 < count && !bends(points[i - 1], points[i], points[i + 1])) continue;
      run(points + from, i + 1 - from, ImDrawFlags_None);
      dot(points[i]);
      from = i;
    }
  }
};

void stroke_path(const Pen& pen, std::vector<ImVec2>& path, bool closed) {
  const std::size_t count = path.size();
  if (!closed || count < 3) {
    pen.open_line(path.data(), static_cast<int>(count));
    return;
  }
  const auto bend_at = [&](std::size_t i) {
    return bends(path[(i + count - 1) % count], path[i], path[(i + 1) % count]);
  };
  std::size_t corner = 0;
  while (corner < count && !bend_at(corner)) ++corner;
  if (corner == count) {
    pen.run(path.data(), static_cast<int>(count), ImDrawFlags_Closed);
    return;
  }
  std::rotate(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(corner), path.end());
  path.push_back(path.front());
  pen.open_line(path.data(), static_cast<int>(path.size()));
}

class Painter {
 public:
  Painter(ImDrawList& list, const Scene& scene, const Palette& palette)
      : list_(list), scene_(scene), palette_(palette) {
    std::uint32_t longest = 0;
    for (const auto& shape : scene.shapes) longest = std::max(longest, shape.count);
    path_.reserve(longest + 1);  // the one piece of memory asked for in a drawing
  }

  void paint(const Pose& pose, const Matrix& fit, float px_per_width) {
    stack_[0] = fit;
    width_scale_ = px_per_width;
    std::size_t depth = 0, hidden = 0;
    for (const auto& item : scene_.items) {
      if (item.step == Scene::Step::shape) {
        if (hidden == 0) shape(scene_.shapes[item.index], stack_[depth]);
      } else if (item.step == Scene::Step::close_part) {
        if (hidden > 0) --hidden;
        else --depth;
      } else if (hidden > 0 || !pose.parts[item.index].shown || depth + 1 == k_deepest) {
        ++hidden;
      } else {
        stack_[depth + 1] = stack_[depth] * matrix_of(pose.parts[item.index]);
        ++depth;
      }
    }
  }

 private:
  void shape(const Scene::Shape& shape, const Matrix& matrix) {
    path_.clear();
    for (std::uint32_t i = 0; i < shape.count; ++i) {
      path_.push_back(matrix.apply(scene_.points[shape.first + i]));
    }
    if (shape.fill != Paint::none) fill(shape, matrix.mirrors());
    if (shape.stroke != Paint::none) {
      const float width = std::max(shape.width * width_scale_, shape.width * k_least_stroke);
      stroke_path({list_, colour_of(shape.stroke, palette_), width}, path_, shape.closed);
    }
  }

  void fill(const Scene::Shape& shape, bool mirrored) {
    const ImU32 colour = colour_of(shape.fill, palette_);
    const int count = static_cast<int>(path_.size());
    if (mirrored) std::reverse(path_.begin(), path_.end());  // fills want clockwise outlines
    if (shape.convex) list_.AddConvexPolyFilled(path_.data(), count, colour);
    else list_.AddConcavePolyFilled(path_.data(), count, colour);
  }

  ImDrawList& list_;
  const Scene& scene_;
  const Palette& palette_;
  std::array<Matrix, k_deepest> stack_;
  std::vector<ImVec2> path_;
  float width_scale_ = 1;
};

}  // namespace

void draw_scene(ImDrawList& list, Rect rect, const Scene& scene, const Pose& pose,
                const Palette& palette) {
  const Rect& seen = pose.frame;
  if (rect.w <= 0 || rect.h <= 0 || seen.w <= 0 || pose.parts.size() != scene.parts.size()) return;
  const float scale = std::min(rect.w / seen.w, rect.h / seen.h);
  const Matrix fit{scale,
                   0,
                   0,
                   scale,
                   rect.x + (rect.w - seen.w * scale) / 2 - seen.x * scale,
                   rect.y + (rect.h - seen.h * scale) / 2 - seen.y * scale};
  list.PushClipRect({rect.x, rect.y}, {rect.x + rect.w, rect.y + rect.h}, true);
  Painter(list, scene, palette)
      .paint(pose, fit, std::min(rect.w / k_full_px, rect.h / k_full_height_px));
  list.PopClipRect();
}

}  // namespace rehale::kit
