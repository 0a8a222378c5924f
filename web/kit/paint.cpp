#include "web/kit/paint.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace rehale::kit {

unsigned packed(Colour colour, float alpha) {
  const auto a = static_cast<int>(std::lround(std::clamp(alpha, 0.0F, 1.0F) * 255));
  return IM_COL32(colour.r, colour.g, colour.b, a);
}

Colour blend(Colour from, Colour to, float share) {
  const auto mix = [share](std::uint8_t a, std::uint8_t b) {
    const float value = static_cast<float>(a) + share * static_cast<float>(b - a);
    return static_cast<std::uint8_t>(std::lround(value));
  };
  return {mix(from.r, to.r), mix(from.g, to.g), mix(from.b, to.b)};
}

Rect shrunk(Rect rect, float by_px) {
  return {rect.x + by_px, rect.y + by_px, rect.w - 2 * by_px, rect.h - 2 * by_px};
}

bool contains(Rect rect, float x, float y) {
  return x >= rect.x && x < rect.x + rect.w && y >= rect.y && y < rect.y + rect.h;
}

Rect intersection(Rect a, Rect b) {
  const float x = std::max(a.x, b.x);
  const float y = std::max(a.y, b.y);
  return {x, y, std::max(0.0F, std::min(a.x + a.w, b.x + b.w) - x),
          std::max(0.0F, std::min(a.y + a.h, b.y + b.h) - y)};
}

void fill_box(ImDrawList* list, Rect rect, Colour colour, float corner_px) {
  list->AddRectFilled({rect.x, rect.y}, {rect.x + rect.w, rect.y + rect.h}, packed(colour),
                      corner_px);
}

void draw_box(ImDrawList* list, Rect rect, const Box& box) {
  const float corner = std::min(box.corner_px, rect.h / 2);
  fill_box(list, rect, box.ground, corner);
  if (box.edge_px <= 0) return;
  const Rect middle = shrunk(rect, box.edge_px / 2);
  list->PathRect({middle.x, middle.y}, {middle.x + middle.w, middle.y + middle.h},
                 corner - box.edge_px / 2);
  list->PathStroke(packed(box.edge), ImDrawFlags_Closed, box.edge_px);
}

std::size_t vertex_count(const ImDrawList* list) {
  return static_cast<std::size_t>(list->VtxBuffer.Size);
}

void move_down(ImDrawList* list, Vertices range, float by_px) {
  for (std::size_t n = range.first; n < range.last; ++n) {
    list->VtxBuffer[static_cast<int>(n)].pos.y += by_px;
  }
}

void stretch_down(ImDrawList* list, Vertices range, float below_y, float by_px) {
  for (std::size_t n = range.first; n < range.last; ++n) {
    float& y = list->VtxBuffer[static_cast<int>(n)].pos.y;
    if (y > below_y) y += by_px;
  }
}

}  // namespace rehale::kit
