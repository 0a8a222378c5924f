// Drawing helpers of the kit over Dear ImGui's draw list. For files of web/kit only.
// Must not know widgets, words or the mirror.
#pragma once

#include <cstddef>

#include "web/kit/ui.h"

namespace rehale::kit {

unsigned packed(Colour colour, float alpha = 1);  // as ImDrawList wants it
Colour blend(Colour from, Colour to, float share);
Rect shrunk(Rect rect, float by_px);
bool contains(Rect rect, float x, float y);
Rect intersection(Rect a, Rect b);

struct Box {
  Colour ground, edge;
  float edge_px = k_edge_px;
  float corner_px = k_corner_px;
};
void draw_box(ImDrawList* list, Rect rect, const Box& box);
void fill_box(ImDrawList* list, Rect rect, Colour colour, float corner_px);

// Content is drawn before it is known how tall it is; these put it right in the same frame.
std::size_t vertex_count(const ImDrawList* list);
struct Vertices {
  std::size_t first = 0, last = 0;
};
void move_down(ImDrawList* list, Vertices range, float by_px);
void stretch_down(ImDrawList* list, Vertices range, float below_y, float by_px);

}  // namespace rehale::kit
