#include "web/kit/screen_frame.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/kit/frame_parts.h"
#include "web/kit/scroll.h"
#include "web/kit/text.h"
#include "web/kit/widget.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

constexpr float k_stage_px = 1240, k_stage_high_px = 760, k_column_gap_px = 48;
constexpr float k_pinned_share =
    0.55F;  // of the height, left for the body, or actions scroll along
constexpr float k_actions_pad_px = 12;
constexpr float k_lean = 0.4F;  // a little above the middle looks like the middle

float pad_px(const Ui& ui) { return ui.height_px() < 480 ? 8.0F : 16.0F; }

float actions_area_px(const ScreenState& screen) {
  return screen.actions_px > 0 ? screen.actions_px + 2 * k_actions_pad_px : 0;
}

// What the screen would like to be high, as the last frame knew it.
float wanted_px(const Ui& ui, const ScreenState& screen) {
  if (!screen.words_known) return 0;
  return screen.words_px + screen.picture_liked_px + 4 * pad_px(ui) + actions_area_px(screen);
}

// Where body and actions may be: below the top bar, not too wide, and no higher than it takes, so
// that the action stays near the words on a large screen.
Rect stage_of(const Ui& ui, float top_px) {
  const float margin = page_margin_px(ui);
  const float width = std::min(ui.width_px() - 2 * margin, k_stage_px * ui.text_scale());
  const float free_px = ui.height_px() - top_px;
  const float wanted =
      std::max(k_stage_high_px * ui.text_scale(), wanted_px(ui, ui.state().screen));
  const float height = std::min(free_px, std::round(wanted));
  return {std::round((ui.width_px() - width) / 2), top_px + std::round((free_px - height) * k_lean),
          width, height};
}

Rect single_column(const Ui& ui, Rect stage) {
  const float width = std::min(stage.w, k_text_column_px * ui.text_scale());
  return {std::round(stage.x + (stage.w - width) / 2), 0, width, 0};
}

bool room_for_two(const Ui& ui, Rect stage) {
  const bool landscape = ui.width_px() >= 600 && ui.width_px() > ui.height_px() * 1.1F;
  const float words = stage.w * 0.55F - k_column_gap_px;
  return (landscape || ui.width_px() >= 960) && words >= 280 * ui.text_scale();
}

Rect body_view(const Ui& ui, const ScreenState& screen) {
  const float actions = screen.pinned ? actions_area_px(screen) : 0;
  return {0, screen.stage.y, ui.width_px(), screen.stage.h - actions};
}

void note_visit(Ui& ui) {
  State& s = ui.state();
  ScreenState& screen = s.screen;
  const std::string visit =
      screen.now.id + "/" + (screen.now.visit.empty() ? screen.now.id : screen.now.visit);
  screen.heading_seen = false;
  screen.focus_heading = false;
  if (visit == screen.visit) return;
  // The shell sees to the focus when the screen itself is a new one.
  screen.focus_heading = screen.visit.starts_with(screen.now.id + "/");
  screen.visit = visit;
  screen.words_known = false;
  screen.picture_liked_px = 0;
  screen.told_why_not.clear();
  s.picked.clear();
  s.undo.clear();
  s.slides.clear();
  s.eases.clear();
  want_frame(ui);
}

void begin_body(Ui& ui) {
  State& s = ui.state();
  const Rect column = single_column(ui, s.screen.stage);
  begin_area(ui, s.body,
             {.key = s.screen.visit,
              .view = body_view(ui, s.screen),
              .x = column.x,
              .width = column.w,
              .pad_top = pad_px(ui)});
  s.screen.words_top = s.column.y;
  if (s.screen.now.progress.of > 0 && !words_fit_bar(ui)) {
    caption(ui, "progress-words", s.screen.now.progress.words);
  }
}

float picture_height(const Ui& ui, const Picture& picture) {
  const State& s = ui.state();
  const float liked = std::min(s.column.width / picture.aspect, s.body.view.h * 0.6F);
  const float least = std::min({picture.least_px, liked, s.body.view.h * 0.6F});
  if (!s.screen.words_known) return std::max(least, s.body.view.h * 0.4F);
  const float spare = s.body.view.h - s.screen.words_px - 3 * pad_px(ui);
  return std::round(std::clamp(spare, least, std::max(least, liked)));
}

// One column, as high as the view allows; the words start beside it, on the side of the hand.
Rect picture_beside(Ui& ui, const Picture& picture) {
  State& s = ui.state();
  const Rect stage = s.screen.stage;
  const float width = std::round(stage.w * 0.45F);
  const float height = std::min(s.body.view.h - 2 * pad_px(ui), width / picture.aspect);
  const bool left = ui.look().left_hand;
  const Rect rect{left ? stage.x + stage.w - width : stage.x,
                  std::round(s.body.view.y + (s.body.view.h - height) * k_lean), width,
                  std::round(height)};
  s.screen.two_columns = true;
  s.column.width = std::min(stage.w - width - k_column_gap_px, k_text_column_px * ui.text_scale());
  s.column.x = left ? rect.x - k_column_gap_px - s.column.width : rect.x + width + k_column_gap_px;
  return rect;
}

// The area is drawn over what scrolled below it.
ActionPress draw_pinned(Ui& ui, const Actions& actions, Rect column) {
  State& s = ui.state();
  const float area = actions_area_px(s.screen);
  if (area <= 0) return ActionPress::none;
  const float top = s.screen.stage.y + s.screen.stage.h - area;
  fill_box(ui.draw_list(), {0, top, ui.width_px(), ui.height_px() - top}, s.ground, 0);
  return draw_actions(ui, actions, {column.x, top + k_actions_pad_px, column.w, 0});
}

// After the content, scrolling along.
ActionPress draw_flowing(Ui& ui, const Actions& actions) {
  const float height = actions_height(ui, actions, column_width(ui));
  if (height <= 0) return ActionPress::none;
  return draw_actions(ui, actions, place(ui, height, 24));
}

void measure_actions(Ui& ui, const Actions& actions, float width_px) {
  ScreenState& screen = ui.state().screen;
  const float before = screen.actions_px;
  const bool was_pinned = screen.pinned;
  screen.actions_px = actions_height(ui, actions, width_px);
  const float left = screen.stage.h - actions_area_px(screen);
  screen.pinned = left >= ui.height_px() * k_pinned_share;
  if (before != screen.actions_px || was_pinned != screen.pinned) want_frame(ui);
}

void end_body(Ui& ui, Rect column) {
  State& s = ui.state();
  const float words_px = s.column.y - s.screen.words_top - s.screen.picture_px;
  if (!s.screen.words_known || std::abs(words_px - s.screen.words_px) > 0.5F) want_frame(ui);
  s.screen.words_px = words_px;
  s.screen.words_known = true;
  const bool lean = is_wide(ui) || s.screen.two_columns;
  end_area(ui, s.body,
           {.lean = lean ? k_lean : 0,
            .pad_bottom = 8,
            .mark_x = column.x + column.w + page_margin_px(ui) / 2 - 2});
}

}  // namespace

bool is_wide(const Ui& ui) { return ui.width_px() >= 600; }

float page_margin_px(const Ui& ui) {
  if (ui.width_px() < 360) return 16;
  return ui.width_px() < 720 ? 24 : 40;
}

TopPress begin_screen(Ui& ui, const Screen& screen) {
  State& s = ui.state();
  CHECK(!s.screen.open, "one screen a frame");
  s.screen.open = true;
  s.screen.now = screen;
  s.screen.two_columns = false;
  s.screen.waiting.clear();
  s.screen.picture_px = 0;
  note_visit(ui);
  s.screen.stage = stage_of(ui, top_bar_px(ui));
  const TopPress press = draw_top_bar(ui);
  begin_body(ui);
  return press;
}

void picture(Ui& ui, const Picture& picture) {
  State& s = ui.state();
  const bool beside = room_for_two(ui, s.screen.stage);
  const bool known = beside || s.screen.words_known;
  s.screen.picture_liked_px =
      beside ? 0 : std::min(s.column.width / picture.aspect, ui.height_px() * 0.36F);
  const Rect rect =
      beside ? picture_beside(ui, picture) : place(ui, picture_height(ui, picture), 0);
  if (known && picture.draw) picture.draw(ui, rect);
  shell::MirrorNode node{
      .id = picture.id, .role = shell::Role::image, .name = picture.alternative, .rect = rect};
  if (beside) {
    s.body.first_vertex = vertex_count(s.list);  // the words move, the picture stays
  } else {
    s.screen.picture_px = rect.h;
    node.clip = s.clip;
  }
  s.screen.waiting.push_back(std::move(node));
}

ActionPress end_screen(Ui& ui, const Actions& actions) {
  State& s = ui.state();
  CHECK(s.screen.open, "end_screen has its begin_screen");
  for (auto& node : s.screen.waiting) s.nodes.push_back(std::move(node));
  s.screen.waiting.clear();
  const Rect column{s.column.x, 0, s.column.width, 0};
  Actions pinned = actions;
  auto press = ActionPress::none;
  if (quiet_flows(ui, actions, column.w)) {
    pinned.quiet = {};
    if (draw_flowing(ui, {.main = {}, .quiet = actions.quiet}) != ActionPress::none) {
      press = ActionPress::quiet;
    }
  }
  measure_actions(ui, pinned, column.w);
  if (!s.screen.pinned) {
    const ActionPress at_end = draw_flowing(ui, pinned);
    if (at_end != ActionPress::none) press = at_end;
  }
  end_body(ui, column);
  if (s.screen.pinned) {
    const ActionPress at_bottom = draw_pinned(ui, pinned, column);
    if (at_bottom != ActionPress::none) press = at_bottom;
  }
  s.screen.open = false;
  return press;
}

void gap(Ui& ui, float steps) { ui.state().column.y += steps * k_grid_px; }

}  // namespace rehale::kit
