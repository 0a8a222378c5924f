#include "web/kit/buttons.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/button_face.h"

namespace rehale::kit {
namespace {

constexpr float k_before_px = 16;

shell::MirrorNode node_of(const Button& button, shell::Role role, Rect rect) {
  return {.id = button.id,
          .role = role,
          .name = button.name.empty() ? button.label : button.name,
          .description = button.description,
          .language = button.language,
          .disabled = !button.enabled,
          .rect = rect};
}

ButtonFace face_of(const Button& button, ButtonKind kind, bool on = false) {
  return {button.label, button.icon, kind, button.enabled, on};
}

// Narrow columns: the whole width; else as wide as the label.
Rect place_button(Ui& ui, const ButtonFace& face) {
  const float column = column_width(ui);
  const float liked = std::max(button_width(ui, face), 200.0F);
  const float width = column < 400 || liked > column ? column : liked;
  const Rect row = place(ui, button_height(ui, face, width), k_before_px);
  return {row.x, row.y, width, row.h};
}

Response draw_button(Ui& ui, const Button& button, const ButtonFace& face, shell::Role role) {
  const Rect rect = place_button(ui, face);
  const Response answer = respond(ui, button.id, rect, button.enabled);
  draw_button_face(ui, face, rect, answer);
  record(ui, node_of(button, role, rect)).checked = face.on;
  return answer;
}

// Words with a line below them: a place to go to, not an act.
Rect draw_underlined(Ui& ui, std::string_view id, std::string_view label, Response& answer) {
  const TypeStyle type = fitted(ui, bold_type(ui), label, column_width(ui));
  const TextBlock& block = wrapped(ui, type, label, column_width(ui));
  const float height = std::max(k_target_px, block.height + 12);
  const Rect row = place(ui, height, 8);
  const Rect rect{row.x, row.y, std::max(k_target_px, block.width), row.h};
  answer = respond(ui, id, rect);
  const Palette& p = ui.palette();
  const Colour colour = answer.hovered || answer.pressed ? p.ink : p.main;
  const float top = rect.y + (rect.h - block.height) / 2;
  draw_text(ui, type, label, block, {.x = rect.x, .y = top, .colour = colour});
  float y = top + block.line_px - std::round(type.size_px * 0.2F);
  for (const TextBlock::Line& line : block.lines) {
    ui.draw_list()->AddRectFilled({rect.x, y}, {rect.x + line.width, y + 2}, packed(colour));
    y += block.line_px;
  }
  return rect;
}

}  // namespace

bool main_button(Ui& ui, const Button& button) {
  return draw_button(ui, button, face_of(button, ButtonKind::main), shell::Role::button).activated;
}

bool quiet_button(Ui& ui, const Button& button) {
  return draw_button(ui, button, face_of(button, ButtonKind::quiet), shell::Role::button).activated;
}

bool toggle_button(Ui& ui, const Button& button, bool on) {
  const ButtonFace face = face_of(button, ButtonKind::quiet, on);
  return draw_button(ui, button, face, shell::Role::toggle).activated ? !on : on;
}

bool text_button(Ui& ui, const Button& button) {
  Response answer;
  const Rect rect = draw_underlined(ui, button.id, button.label, answer);
  record(ui, node_of(button, shell::Role::button, rect));
  return answer.activated;
}

void text_link(Ui& ui, const Link& link) {
  Response answer;
  const Rect rect = draw_underlined(ui, link.id, link.label, answer);
  record(ui, {.id = link.id,
              .role = shell::Role::link,
              .name = link.label,
              .value = link.href,
              .rect = rect});
}

}  // namespace rehale::kit
