// Dialogs: a card over the screen; everything else rests until it is closed.
#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/cards.h"
#include "web/kit/icons.h"
#include "web/kit/scroll.h"
#include "web/kit/text.h"
#include "web/kit/widget.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

constexpr float k_width_px = 560, k_pad_px = 24;
using Kind = shell::MirrorAction::Kind;

bool dismissed(State& s, const std::string& id) {
  const auto same = [&](const shell::MirrorAction& action) {
    return action.kind == Kind::dismiss && (action.id == id || action.id.empty());
  };
  return std::ranges::any_of(s.actions, same);
}

Rect panel_of(const Ui& ui, float content_px) {
  const float margin = ui.width_px() < 480 ? 12.0F : 32.0F;
  const float width = std::min(ui.width_px() - 2 * margin, k_width_px * ui.text_scale());
  const float height = std::min(ui.height_px() - 2 * margin, content_px);
  return {std::round((ui.width_px() - width) / 2), std::round((ui.height_px() - height) / 2), width,
          std::round(height)};
}

bool draw_close(Ui& ui, const std::string& id, Rect rect) {
  const Palette& p = ui.palette();
  const Response answer = respond(ui, id, rect);
  const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.card;
  draw_box(ui.draw_list(), rect, {ground, p.edge, k_edge_px, rect.h / 2});
  draw_icon(ui.draw_list(), Icon::close, shrunk(rect, rect.w * 0.3F), p.ink);
  record(ui, {.id = id, .role = shell::Role::button, .name = ui.words().close, .rect = rect});
  return answer.activated;
}

// Title and close button; returns how high they are.
float draw_head(Ui& ui, const Dialog& dialog, Rect panel, bool& closed) {
  const float size = roomy(ui, k_target_px);
  const float room = panel.w - 3 * k_pad_px - size;
  const TypeStyle type = fitted(ui, {Face::bold, scaled(ui, k_question_px)}, dialog.title, room);
  const TextBlock& block = wrapped(ui, type, dialog.title, room);
  const float height = std::max(size, block.height);
  const Rect title{panel.x + k_pad_px, panel.y + k_pad_px + std::round((height - block.height) / 2),
                   room, block.height};
  draw_text(ui, type, dialog.title, block,
            {.x = title.x, .y = title.y, .colour = ui.palette().ink});
  record(ui, {.id = joined(dialog.id, "title"),
              .role = shell::Role::heading,
              .name = dialog.title,
              .level = 2,
              .rect = title});
  closed = draw_close(ui, joined(dialog.id, "close"),
                      {panel.x + panel.w - k_pad_px - size, panel.y + k_pad_px, size, size});
  return height + 1.5F * k_pad_px;
}

void open_now(Ui& ui, const Dialog& dialog) {
  State& s = ui.state();
  if (s.dialog.open_id == dialog.id) return;
  if (s.dialog.open_id.empty()) s.dialog.return_focus = shell::focused_id();
  s.dialog.open_id = dialog.id;
  s.dialog.content_px = ui.height_px() * 0.6F;
  s.dialog_body = {};
  s.press = {};
  ui.focus(dialog.id);
  want_frame(ui);
}

}  // namespace

bool begin_dialog(Ui& ui, const Dialog& dialog) {
  State& s = ui.state();
  CHECK(!s.screen.open && !s.dialog.inside, "dialogs come after end_screen, one at a time");
  open_now(ui, dialog);
  s.dialog.drawn_id = dialog.id;
  s.dialog.inside = true;
  s.texts.clear();
  const Rect panel = panel_of(ui, s.dialog.content_px);
  const Palette& p = ui.palette();
  s.list->AddRectFilled({0, 0}, {ui.width_px(), ui.height_px()}, packed({16, 12, 18}, 0.55F));
  s.ground = p.card;
  draw_box(s.list, panel, {p.card, p.edge});
  record(ui, {.id = dialog.id, .role = shell::Role::dialog, .name = dialog.title, .rect = panel});
  s.parent = dialog.id;
  bool closed = false;
  const float head = draw_head(ui, dialog, panel, closed);
  s.dialog.head_px = head;
  begin_area(
      ui, s.dialog_body,
      {.key = dialog.id,
       .view = {panel.x + 2, panel.y + head + 8, panel.w - 4, panel.h - head - 8 - k_pad_px / 2},
       .x = panel.x + k_pad_px,
       .width = panel.w - 2 * k_pad_px});
  return closed || dismissed(s, dialog.id);
}

void end_dialog(Ui& ui) {
  State& s = ui.state();
  CHECK(s.dialog.inside, "end_dialog has its begin_dialog");
  const Rect view = s.dialog_body.view;
  end_area(ui, s.dialog_body, {.pad_bottom = k_pad_px / 2, .mark_x = view.x + view.w - 12});
  const float wanted = s.dialog.head_px + 8 + s.dialog_body.content_px + k_pad_px / 2;
  if (std::abs(wanted - s.dialog.content_px) > 0.5F) want_frame(ui);
  s.dialog.content_px = wanted;
  s.dialog.inside = false;
  s.parent.clear();
  s.ground = ui.palette().paper;
}

}  // namespace rehale::kit
