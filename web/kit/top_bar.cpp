// The top bar: back, stepping stones, read aloud, help, settings. The same corners on every screen.
#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "web/kit/frame_parts.h"
#include "web/kit/read_aloud.h"
#include "web/kit/settings_dialog.h"
#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 8;
constexpr float k_stone_px = 12, k_stone_here_px = 20;
constexpr float k_stone_step_least_px = 9, k_stone_row_px = 28;

float button_px(const Ui& ui) { return roomy(ui, k_target_px); }

bool is_low(const Ui& ui) { return ui.height_px() < 480; }

float edge_px(const Ui& ui) { return ui.width_px() < 360 ? 8.0F : 16.0F; }

// What is left between the buttons; in the middle of the window where there is room for that.
Rect middle_of(const Ui& ui) {
  const float buttons = can_read_aloud(ui) ? 3 : 2;
  const float right = edge_px(ui) + buttons * (button_px(ui) + k_gap_px);
  const float left = ui.width_px() >= 600 ? right : edge_px(ui) + button_px(ui) + k_gap_px;
  return {left, 0, ui.width_px() - left - right, 0};
}

float stone_step(const Progress& progress, float room) {
  return std::min(24.0F, room / static_cast<float>(progress.of));
}

// A row of their own, where three buttons leave too little between them.
bool stones_below(const Ui& ui) {
  const Progress& progress = ui.state().screen.now.progress;
  return progress.of > 0 && !is_low(ui) && !words_fit_bar(ui) &&
         stone_step(progress, middle_of(ui).w) < k_stone_step_least_px;
}

struct IconButton {
  std::string id;
  std::string name;
  Icon icon = Icon::none;
};

bool draw_icon_button(Ui& ui, const IconButton& button, Rect rect) {
  const Palette& p = ui.palette();
  const Response answer = respond(ui, button.id, rect);
  const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.paper;
  draw_box(ui.draw_list(), rect, {ground, p.edge, k_edge_px, rect.h / 2});
  draw_icon(ui.draw_list(), button.icon, shrunk(rect, rect.w * 0.24F), p.ink);
  record(ui, {.id = button.id, .role = shell::Role::button, .name = button.name, .rect = rect});
  return answer.activated;
}

void draw_stones(Ui& ui, const Progress& progress, Rect row) {
  const Palette& p = ui.palette();
  const float step = stone_step(progress, row.w);
  if (step < k_stone_step_least_px) return;
  const float stone = std::min(k_stone_px, step - 3);
  const float here = std::min(k_stone_here_px, step + 2);
  float x = row.x + (row.w - step * static_cast<float>(progress.of - 1)) / 2;
  const float y = row.y + row.h / 2;
  for (int n = 1; n <= progress.of; ++n, x += step) {
    if (n < progress.here) {
      ui.draw_list()->AddCircleFilled({x, y}, stone / 2, packed(p.main));
    } else if (n == progress.here) {
      ui.draw_list()->AddCircleFilled({x, y}, here / 2, packed(p.main));
      ui.draw_list()->AddCircleFilled({x, y}, here / 2 - 3, packed(p.highlight));
    } else {
      ui.draw_list()->AddCircle({x, y}, stone / 2 - 1, packed(p.edge), 0, 2);
    }
  }
}

void draw_progress(Ui& ui) {
  const Progress& progress = ui.state().screen.now.progress;
  if (progress.of <= 0) return;
  Rect middle = middle_of(ui);
  middle.h = top_bar_px(ui);
  if (stones_below(ui)) {
    middle = {edge_px(ui), middle.h - k_stone_row_px, ui.width_px() - 2 * edge_px(ui),
              k_stone_row_px};
  }
  Rect stones = middle;
  if (words_fit_bar(ui)) {
    const TypeStyle type = caption_type(ui);
    const TextBlock& block = wrapped(ui, type, progress.words, 1e6F);
    const float top = (middle.h - k_stone_here_px - block.height - 2) / 2;
    stones = {middle.x, top, middle.w, k_stone_here_px};
    draw_text(ui, type, progress.words, block,
              {.x = middle.x,
               .y = top + k_stone_here_px + 2,
               .colour = ui.palette().soft_ink,
               .align = Align::middle,
               .width = middle.w});
  }
  draw_stones(ui, progress, stones);
  record(ui, {.id = "progress",
              .role = shell::Role::progress,
              .name = progress.words,
              .value = progress.words,
              .number = static_cast<double>(progress.here),
              .max = static_cast<double>(progress.of),
              .rect = middle});
}

void draw_read_aloud(Ui& ui, Rect rect) {
  const bool reads = is_reading(ui);
  const IconButton button{"read-aloud", reads ? ui.words().read_stop : ui.words().read_aloud,
                          reads ? Icon::stop : Icon::speaker};
  if (draw_icon_button(ui, button, rect)) start_or_stop_reading(ui);
}

}  // namespace

bool words_fit_bar(const Ui& ui) {
  const Progress& progress = ui.state().screen.now.progress;
  if (is_low(ui) && ui.text_scale() > 1.2F) return false;
  return text_width(ui, caption_type(ui), progress.words) <= middle_of(ui).w;
}

float top_bar_px(const Ui& ui) {
  const float least = is_low(ui) ? 56.0F : 64.0F;
  const float buttons = button_px(ui) + (is_low(ui) ? 8.0F : 16.0F);
  const bool words = ui.state().screen.now.progress.of > 0 && words_fit_bar(ui);
  const float stones = words ? k_stone_here_px + caption_type(ui).size_px * k_line_height + 10 : 0;
  return std::round(std::max({least, buttons, stones})) + (stones_below(ui) ? k_stone_row_px : 0);
}

TopPress draw_top_bar(Ui& ui) {
  const Screen& screen = ui.state().screen.now;
  const Words& w = ui.words();
  const float size = button_px(ui);
  const float row = top_bar_px(ui) - (stones_below(ui) ? k_stone_row_px : 0);
  const float y = std::round((row - size) / 2);
  const float right = ui.width_px() - edge_px(ui) - size;
  auto press = TopPress::none;
  const Rect back{edge_px(ui), y, size, size};
  if (screen.back && draw_icon_button(ui, {"back", w.back, Icon::back}, back)) {
    press = TopPress::back;
  }
  draw_progress(ui);
  if (!screen.top_buttons) return press;
  if (can_read_aloud(ui)) draw_read_aloud(ui, {right - 2 * (size + k_gap_px), y, size, size});
  const Rect help{right - size - k_gap_px, y, size, size};
  if (screen.help && draw_icon_button(ui, {"help", w.help, Icon::help}, help)) {
    press = TopPress::help;
  }
  const Rect look{right, y, size, size};
  if (draw_icon_button(ui, {"look-button", w.look, Icon::look}, look)) open_settings(ui);
  return press;
}

}  // namespace rehale::kit
