#include "web/kit/button_face.h"

#include <algorithm>
#include <cmath>

namespace rehale::kit {
namespace {

constexpr float k_pad_x_px = 24, k_pad_y_px = 12;

float icon_px(const Ui& ui) { return scaled(ui, 24); }

float icon_room_px(const Ui& ui, const ButtonFace& face) {
  return face.icon == Icon::none ? 0 : icon_px(ui) + 12;
}

float label_room_px(const Ui& ui, const ButtonFace& face, float width_px) {
  const float pad = width_px < 240 ? k_pad_x_px / 2 : k_pad_x_px;
  return std::max(24.0F, width_px - 2 * pad - icon_room_px(ui, face));
}

TypeStyle label_type(const Ui& ui, const ButtonFace& face, float width_px) {
  return fitted(ui, bold_type(ui), face.label, label_room_px(ui, face, width_px));
}

struct Look3 {
  Colour ground, edge, words;
};

Look3 main_look(const Ui& ui, bool enabled, const Response& answer) {
  const Palette& p = ui.palette();
  if (!enabled) {
    const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.card;
    return {ground, p.edge, p.soft_ink};
  }
  const Colour ground = answer.pressed ? p.main_press : answer.hovered ? p.main_hover : p.main;
  return {ground, ground, p.on_main};
}

Look3 quiet_look(const Ui& ui, const ButtonFace& face, const Response& answer) {
  const Palette& p = ui.palette();
  Colour ground = face.on ? p.main_wash : ui.state().ground;
  if (answer.hovered) ground = p.row_hover;
  if (answer.pressed) ground = p.row_press;
  return {ground, face.on ? p.main : p.edge, face.enabled ? p.main : p.soft_ink};
}

}  // namespace

float button_height(Ui& ui, const ButtonFace& face, float width_px) {
  const TypeStyle type = label_type(ui, face, width_px);
  const float room = label_room_px(ui, face, width_px);
  return std::max(k_answer_px, wrapped(ui, type, face.label, room).height + 2 * k_pad_y_px);
}

float button_width(const Ui& ui, const ButtonFace& face) {
  return std::ceil(text_width(ui, bold_type(ui), face.label) + icon_room_px(ui, face) +
                   2 * k_pad_x_px + 8);
}

bool words_keep_size(const Ui& ui, const ButtonFace& face, float width_px) {
  return label_type(ui, face, width_px).size_px >= bold_type(ui).size_px;
}

void draw_button_face(Ui& ui, const ButtonFace& face, Rect rect, const Response& answer) {
  const bool main = face.kind == ButtonKind::main;
  const Look3 look = main ? main_look(ui, face.enabled, answer) : quiet_look(ui, face, answer);
  draw_box(ui.draw_list(), rect,
           {look.ground, look.edge, face.on ? k_edge_chosen_px : k_edge_px, k_corner_px});
  const TypeStyle type = label_type(ui, face, rect.w);
  const TextBlock& block = wrapped(ui, type, face.label, label_room_px(ui, face, rect.w));
  const float icon_room = icon_room_px(ui, face);
  const float left = std::round(rect.x + (rect.w - block.width - icon_room) / 2);
  const float top = std::round(rect.y + (rect.h - block.height) / 2);
  if (icon_room > 0) {
    const float size = icon_px(ui);
    draw_icon(ui.draw_list(), face.icon, {left, rect.y + (rect.h - size) / 2, size, size},
              look.words);
  }
  draw_text(ui, type, face.label, block,
            {.x = left + icon_room,
             .y = top,
             .colour = look.words,
             .align = Align::middle,
             .width = block.width});
}

}  // namespace rehale::kit
