#include "web/kit/body_dots.h"

#include <imgui.h>

#include <algorithm>
#include <cstddef>
#include <span>

#include "web/kit/body_shapes.h"
#include "web/kit/paint.h"
#include "web/kit/type.h"

namespace rehale::kit {
namespace {

Colour colour_of(const Palette& p, DotPlace place) {
  switch (place) {
    case DotPlace::device:
      return p.soft_ink;
    case DotPlace::mouth:
      return p.mend;
    case DotPlace::airways:
      return p.ink;
    case DotPlace::lungs:
      return p.well;
    case DotPlace::air:
      return p.soft_ink;
  }
  return p.ink;
}

// From drawing units to the canvas.
struct Frame {
  float x, y, scale;
  [[nodiscard]] ImVec2 operator()(At p) const { return {x + p.x * scale, y + p.y * scale}; }
};

struct Fill {
  Colour fill, edge;
  float edge_px;
};
// Corners stay: straight-sided things.
void shape(ImDrawList* list, const Frame& to, std::span<const At> points, const Fill& look) {
  for (const At p : points) list->PathLineTo(to(p));
  list->AddConcavePolyFilled(list->_Path.Data, list->_Path.Size, packed(look.fill));
  list->PathStroke(packed(look.edge), ImDrawFlags_Closed, look.edge_px);
}

// Grown things: a closed Catmull-Rom curve through the points.
constexpr int k_pieces = 4;
void soft_shape(ImDrawList* list, const Frame& to, std::span<const At> points, const Fill& look) {
  const std::size_t count = points.size();
  for (std::size_t i = 0; i < count; ++i) {
    const At a = points[(i + count - 1) % count], b = points[i];
    const At c = points[(i + 1) % count], d = points[(i + 2) % count];
    for (int piece = 0; piece < k_pieces; ++piece) {
      const float t = static_cast<float>(piece) / k_pieces;
      const auto along = [t](float p, float q, float r, float s) {
        return q + .5F * t * (r - p + t * (2 * p - 5 * q + 4 * r - s + t * (3 * (q - r) + s - p)));
      };
      list->PathLineTo(to({along(a.x, b.x, c.x, d.x), along(a.y, b.y, c.y, d.y)}));
    }
  }
  list->AddConcavePolyFilled(list->_Path.Data, list->_Path.Size, packed(look.fill));
  list->PathStroke(packed(look.edge), ImDrawFlags_Closed, look.edge_px);
}

// Head and chest end in a straight cut.
void draw_outline(ImDrawList* list, const Frame& to, const Fill& look) {
  list->PushClipRect(to({0, 0}), to({k_width + 4, k_height - 1}), true);
  soft_shape(list, to, k_outline, look);
  list->PopClipRect();
  list->AddLine(to({28, k_height - 1}), to({193, k_height - 1}), packed(look.edge), look.edge_px);
}

void draw_figure(Ui& ui, const Frame& to) {
  const Palette& p = ui.palette();
  ImDrawList* list = ui.draw_list();
  const float thick = std::max(1.5F, 2 * to.scale);
  const float thin = std::max(1.0F, 1.2F * to.scale);
  draw_outline(list, to, {p.skin, p.ink, thick});
  list->AddCircleFilled(to({70, 62}), 2.6F * to.scale, packed(p.ink));  // an eye
  soft_shape(list, to, k_lung_left, {p.card, p.ink, thin});
  soft_shape(list, to, k_lung_right, {p.card, p.ink, thin});
  soft_shape(list, to, k_mouth, {p.card, p.ink, thin});
  shape(list, to, k_branch_left, {p.card, p.ink, thin});
  shape(list, to, k_branch_right, {p.card, p.ink, thin});
  shape(list, to, k_windpipe, {p.card, p.ink, thin});
  shape(list, to, k_device, {p.card, p.ink, thick});
  // Air has no edge: three soft strokes.
  for (const float y : {12.0F, 36.0F, 60.0F}) {
    list->AddBezierCubic(to({4, y}), to({18, y - 8}), to({32, y + 8}), to({46, y}), packed(p.edge),
                         thin);
  }
}

void draw_dots(Ui& ui, const Frame& to, const Body& body) {
  for (int n = 0; n < k_dot_places; ++n) {
    const auto place = static_cast<DotPlace>(n);
    const int count = std::max(0, body.dots[static_cast<std::size_t>(n)]);
    if (count == 0) continue;
    const Seats seats = seats_of(place, static_cast<std::size_t>(count));
    for (int i = 0; i < count && seats.count > 0; ++i) {
      const ImVec2 at = to(seats.at[static_cast<std::size_t>(i) % seats.count]);
      draw_dot(ui, place, at.x, at.y, std::max(1.6F, k_dot * to.scale));
    }
  }
}

float words_px(Ui& ui, TypeStyle style, const std::string& words, float width) {
  const TypeStyle used = fitted(ui, style, words, width);
  return wrapped(ui, used, words, width).height;
}

// How high the words of the picture are in that size: labels above, the note below.
struct CaptionHeights {
  float labels = 0, note = 0;
};
CaptionHeights words_of(Ui& ui, const Bodies& bodies, float size_px, float width) {
  CaptionHeights words;
  const float each = width / static_cast<float>(std::max<std::size_t>(1, bodies.bodies.size()));
  for (const Body& body : bodies.bodies)
    words.labels = std::max(words.labels, words_px(ui, {Face::bold, size_px}, body.label, each));
  words.note = words_px(ui, {Face::regular, size_px}, bodies.note, width);
  return words;
}

// The person's own size, or what leaves the figures half of the height; never below a caption's.
float words_size_px(Ui& ui, const Bodies& bodies, Rect rect) {
  float size = caption_type(ui).size_px;
  while (size > k_caption_px) {
    const CaptionHeights words = words_of(ui, bodies, size, rect.w);
    if (words.labels + words.note <= rect.h / 2) break;
    size -= 1;
  }
  return size;
}

void middle_words(Ui& ui, TypeStyle style, const std::string& words, Rect place) {
  const TypeStyle used = fitted(ui, style, words, place.w);
  const TextBlock& block = wrapped(ui, used, words, place.w);
  draw_text(ui, used, words, block,
            {.x = place.x,
             .y = place.y,
             .colour = ui.palette().ink,
             .align = Align::middle,
             .width = place.w});
}

}  // namespace

void draw_dot(Ui& ui, DotPlace place, float x, float y, float radius) {
  ImDrawList* list = ui.draw_list();
  const unsigned colour = packed(colour_of(ui.palette(), place));
  const float r = radius;
  switch (place) {
    case DotPlace::device:
      return list->AddRectFilled({x - r * .9F, y - r * .9F}, {x + r * .9F, y + r * .9F}, colour);
    case DotPlace::mouth:
      return list->AddCircle({x, y}, r * .85F, colour, 0, std::max(1.0F, r * .5F));
    case DotPlace::airways:
      return list->AddTriangleFilled({x, y - r * 1.2F}, {x - r * 1.1F, y + r * .8F},
                                     {x + r * 1.1F, y + r * .8F}, colour);
    case DotPlace::lungs:
      return list->AddCircleFilled({x, y}, r, colour);
    case DotPlace::air:
      return list->AddQuad({x, y - r * 1.2F}, {x + r * 1.2F, y}, {x, y + r * 1.2F},
                           {x - r * 1.2F, y}, colour, std::max(1.0F, r * .45F));
  }
}

void draw_bodies(Ui& ui, Rect rect, const Bodies& bodies) {
  const auto count = static_cast<float>(std::max<std::size_t>(1, bodies.bodies.size()));
  const float size = words_size_px(ui, bodies, rect);
  const CaptionHeights words = words_of(ui, bodies, size, rect.w);
  const float room = rect.h - words.labels - words.note - 8;
  const float wide = rect.w / count - 8;
  const float scale = std::max(.1F, std::min(wide / k_width, room / k_height));
  for (std::size_t n = 0; n < bodies.bodies.size(); ++n) {
    const Body& body = bodies.bodies[n];
    const float left = rect.x + rect.w / count * static_cast<float>(n);
    middle_words(ui, {Face::bold, size}, body.label, {left, rect.y, rect.w / count, 0});
    const Frame to{left + (rect.w / count - k_width * scale) / 2, rect.y + words.labels + 4, scale};
    draw_figure(ui, to);
    draw_dots(ui, to, body);
  }
  const float below = rect.y + words.labels + k_height * scale + 6;
  middle_words(ui, {Face::regular, size}, bodies.note, {rect.x, below, rect.w, 0});
}

}  // namespace rehale::kit
