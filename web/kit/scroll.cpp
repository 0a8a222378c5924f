#include "web/kit/scroll.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_drag_px = 24;  // a drift below this is still a tap
constexpr float k_glide_halving_s = 0.18F;
constexpr float k_glide_least = 30;  // px a second: slower than this, it rests
constexpr float k_glide_most = 2400;
constexpr float k_hidden_px = 10;  // less than this hides nothing but room
constexpr float k_reveal_margin_px = 24;
using Kind = shell::MirrorAction::Kind;

float room_below(const ScrollArea& area) { return std::max(0.0F, area.content_px - area.view.h); }

float seconds(const State& s) {
  return static_cast<float>(std::clamp(s.now_ms - s.last_ms, 0.0, 100.0) / 1000);
}

void follow_finger(State& s, ScrollArea& area) {
  const PointerState& p = s.pointer;
  if (p.pressed) {
    s.press.began_in_area = contains(area.view, p.x, p.y);
    area.velocity = 0;
    area.glide_start_ms = -1;
  }
  if (p.down && p.touch && s.press.began_in_area && room_below(area) > 0 &&
      std::abs(p.y - s.press.y) > k_drag_px) {
    area.dragging = true;
  }
  if (!area.dragging) return;
  s.press.id.clear();  // a scroll presses nothing
  area.offset -= p.dy;
  const float step = seconds(s);
  if (step > 0 && p.down) area.velocity += 0.4F * (-p.dy / step - area.velocity);
  if (p.down) return;
  area.dragging = false;
  area.velocity = std::clamp(area.velocity, -k_glide_most, k_glide_most);
  if (s.preferences.reduced_motion) area.velocity = 0;
}

void glide(Ui& ui, ScrollArea& area) {
  State& s = ui.state();
  if (!area.dragging && area.velocity != 0) {
    area.offset += area.velocity * seconds(s);
    area.velocity *= std::exp2(-seconds(s) / k_glide_halving_s);
    if (std::abs(area.velocity) < k_glide_least) area.velocity = 0;
    want_frame(ui);
  }
  if (area.glide_start_ms < 0) return;
  const double t = std::clamp((s.now_ms - area.glide_start_ms) / k_motion_ms, 0.0, 1.0);
  const double eased = 1 - (1 - t) * (1 - t) * (1 - t);
  area.offset = static_cast<float>(area.glide_from + (area.glide_to - area.glide_from) * eased);
  if (t >= 1) area.glide_start_ms = -1;
  want_frame(ui);
}

void follow_keys(State& s, ScrollArea& area) {
  area.offset -= s.pointer.wheel;
  if (s.pointer.wheel != 0) area.glide_start_ms = -1;
  for (const shell::MirrorAction& action : s.actions) {
    if (action.kind == Kind::scroll) area.offset += static_cast<float>(action.number);
  }
  std::erase_if(s.actions,
                [](const shell::MirrorAction& action) { return action.kind == Kind::scroll; });
}

void clamp_offset(ScrollArea& area) {
  const float most = room_below(area);
  if (area.offset < 0 || area.offset > most) area.velocity = 0;
  area.offset = std::clamp(area.offset, 0.0F, most);
}

// How far to scroll so that the node is in view with some room around it.
float reveal_offset(const ScrollArea& area, Rect node) {
  const float margin = std::clamp((area.view.h - node.h) / 2, 0.0F, k_reveal_margin_px);
  const float top = node.y - margin - area.view.y;
  const float bottom = node.y + node.h + margin - area.view.y - area.view.h;
  if (top >= 0 && bottom <= 0) return area.offset;
  const bool taller = node.h > area.view.h;
  const float by = taller || top < 0 ? top : bottom;
  return std::clamp(area.offset + by, 0.0F, room_below(area));
}

void reveal(Ui& ui, ScrollArea& area) {
  State& s = ui.state();
  if (s.reveal_id.empty()) return;
  for (std::size_t n = area.first_node; n < s.nodes.size(); ++n) {
    if (s.nodes[n].id != s.reveal_id || s.nodes[n].clip.w <= 0) continue;
    const float to = reveal_offset(area, s.nodes[n].rect);
    s.reveal_id.clear();
    if (std::abs(to - area.offset) < 1) return;
    if (s.reveal_glides && !ui.reduced_motion()) {
      area.glide_from = area.offset;
      area.glide_to = to;
      area.glide_start_ms = s.now_ms;
    } else {
      area.offset = to;
    }
    want_frame(ui);
    return;
  }
}

void draw_fade(Ui& ui, Rect edge, bool dense_at_top) {
  const unsigned dense = packed(ui.state().ground, 0.95F);
  const unsigned clear = packed(ui.state().ground, 0);
  const unsigned top = dense_at_top ? dense : clear;
  const unsigned bottom = dense_at_top ? clear : dense;
  ui.draw_list()->AddRectFilledMultiColor({edge.x, edge.y}, {edge.x + edge.w, edge.y + edge.h}, top,
                                          top, bottom, bottom);
}

// At the right, where rows and lines have least to hide.
void draw_more_mark(Ui& ui, Rect corner) {
  const float size = roomy(ui, 32);
  const Rect disc{corner.x - size, corner.y - size - 2, size, size};
  draw_box(ui.draw_list(), disc, {ui.state().ground, ui.palette().edge, k_edge_px, size / 2});
  draw_icon(ui.draw_list(), Icon::chevron_down, shrunk(disc, size * 0.27F), ui.palette().main);
}

void draw_more(Ui& ui, const ScrollArea& area, float mark_x) {
  const float room = room_below(area);
  if (room < k_hidden_px) return;
  const Rect view = area.view;
  const float fade = roomy(ui, 28);
  if (area.offset > k_hidden_px) draw_fade(ui, {view.x, view.y, view.w, fade}, true);
  if (area.offset < room - k_hidden_px) {
    draw_fade(ui, {view.x, view.y + view.h - fade, view.w, fade}, false);
    draw_more_mark(ui, {area.right_x, view.y + view.h});
  }
  const float track = view.h - 16;
  const float length = std::max(40.0F, track * view.h / area.content_px);
  const float top = view.y + 8 + (track - length) * area.offset / room;
  fill_box(ui.draw_list(), {mark_x, top, 4, length}, ui.palette().edge, 2);
}

// The content lies where the last frame thought best; move it to where this frame knows best.
void settle(Ui& ui, ScrollArea& area, float by_px) {
  State& s = ui.state();
  if (std::abs(by_px) < 0.5F) return;
  move_down(s.list, {area.first_vertex, vertex_count(s.list)}, by_px);
  for (std::size_t n = area.first_node; n < s.nodes.size(); ++n) {
    if (s.nodes[n].clip.w > 0) s.nodes[n].rect.y += by_px;
  }
  want_frame(ui);  // lines that were outside the view a moment ago were not drawn
}

}  // namespace

void begin_area(Ui& ui, ScrollArea& area, const AreaPlan& plan) {
  State& s = ui.state();
  if (area.key != plan.key) {
    const float shift = area.shift;
    area = {};
    area.key = plan.key;
    area.shift = shift;
  }
  area.view = plan.view;
  area.right_x = plan.x + plan.width;
  if (s.dialog.inside || s.dialog.open_id.empty()) {  // what lies below a dialog rests
    follow_finger(s, area);
    follow_keys(s, area);
  }
  glide(ui, area);
  clamp_offset(area);
  s.area = &area;
  s.clip_on = true;
  s.clip = plan.view;
  s.list->PushClipRect({plan.view.x, plan.view.y},
                       {plan.view.x + plan.view.w, plan.view.y + plan.view.h}, true);
  s.column = {plan.x, plan.width, plan.view.y + plan.pad_top + std::round(area.shift - area.offset),
              true};
  area.top_y = s.column.y;
  area.pad_top = plan.pad_top;
  area.first_vertex = vertex_count(s.list);
  area.first_node = s.nodes.size();
}

void end_area(Ui& ui, ScrollArea& area, const AreaEnd& end) {
  State& s = ui.state();
  area.content_px = area.pad_top + (s.column.y - area.top_y) + end.pad_bottom;
  const float free_px = std::max(0.0F, area.view.h - area.content_px);
  const float before = std::round(area.shift - area.offset);
  area.shift = std::round(free_px * end.lean);
  clamp_offset(area);
  settle(ui, area, std::round(area.shift - area.offset) - before);
  reveal(ui, area);
  s.list->PopClipRect();
  draw_more(ui, area, end.mark_x);
  s.clip_on = false;
  s.area = nullptr;
}

}  // namespace rehale::kit
