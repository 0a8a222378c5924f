#include "web/kit/order_row.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/mark.h"

namespace rehale::kit {
namespace {

constexpr float k_pad_px = 12;

float number_px(const Ui& ui) { return roomy(ui, 36); }
float move_px(const Ui& ui) { return roomy(ui, k_target_px); }
float moves_px(const Ui& ui) { return 2 * move_px(ui) + 8; }

bool moves_at_left(const Ui& ui) { return ui.look().left_hand; }

// Move buttons stand beside the label where it keeps room for a short word or two, else below it.
bool moves_beside(const Ui& ui) {
  const float room = column_width(ui) - 4 * k_pad_px - number_px(ui) - moves_px(ui);
  return room >= 5.5F * scaled(ui, k_body_px);
}

float label_px(const Ui& ui, bool locked) {
  const float beside = moves_beside(ui) && !locked ? moves_px(ui) + k_pad_px : 0;
  return column_width(ui) - 3 * k_pad_px - number_px(ui) - beside;
}

TypeStyle label_type(const Ui& ui, const OrderCard& card, bool locked) {
  return fitted(ui, body_type(ui), card.label, label_px(ui, locked));
}

float words_height(Ui& ui, const OrderCard& card, bool locked) {
  const float room = label_px(ui, locked);
  float height = wrapped(ui, label_type(ui, card, locked), card.label, room).height;
  const std::string& told = mark_words(ui.words(), card.mark, "");
  if (!told.empty()) height += mark_height(ui, told, room);
  if (!card.note.empty()) height += wrapped(ui, body_type(ui), card.note, room).height;
  return height;
}

std::string worded(const std::string& pattern, const OrderRow& row, int place) {
  return fill(pattern, {{"label", row.card->label},
                        {"place", std::to_string(place)},
                        {"count", std::to_string(row.count)}});
}

Box box_of(const Palette& p, const OrderRow& row, const Response& answer) {
  if (row.card->mark == Mark::going_well || row.card->mark == Mark::to_mend) {
    const MarkLook look = mark_look(p, row.card->mark);
    return {look.wash, look.colour, k_edge_chosen_px};
  }
  if (row.picked) return {p.highlight, p.main, k_edge_chosen_px};
  if (answer.pressed) return {p.row_press, p.main, k_edge_px};
  return {answer.hovered ? p.row_hover : p.card, p.edge, k_edge_px};
}

void draw_number(Ui& ui, const OrderRow& row, Rect rect) {
  const Palette& p = ui.palette();
  const float size = number_px(ui);
  const Rect spot{rect.x + k_pad_px, rect.y + std::round((rect.h - size) / 2), size, size};
  fill_box(ui.draw_list(), spot, row.picked ? p.main : p.main_wash, size / 2);
  const Colour colour = row.picked ? p.on_main : p.main;
  if (row.picked) {
    draw_icon(ui.draw_list(), Icon::hand, shrunk(spot, size * 0.18F), colour);
    return;
  }
  const std::string number = std::to_string(row.place);
  const TypeStyle type{Face::bold, std::min(scaled(ui, k_body_px), size * 0.62F)};
  const TextBlock& block = wrapped(ui, type, number, 1e6F);
  draw_text(ui, type, number, block,
            {.x = spot.x,
             .y = spot.y + (size - block.height) / 2,
             .colour = colour,
             .align = Align::middle,
             .width = size});
}

void draw_words(Ui& ui, const OrderRow& row, Rect rect) {
  const float room = label_px(ui, row.locked);
  const float x = rect.x + 2 * k_pad_px + number_px(ui);
  float y = rect.y + (rect.h - words_height(ui, *row.card, row.locked)) / 2;
  const TypeStyle type = label_type(ui, *row.card, row.locked);
  const TextBlock& label = wrapped(ui, type, row.card->label, room);
  draw_text(ui, type, row.card->label, label, {.x = x, .y = y, .colour = ui.palette().ink});
  y += label.height;
  const std::string& told = mark_words(ui.words(), row.card->mark, "");
  if (!told.empty()) {
    draw_mark(ui, mark_look(ui.palette(), row.card->mark), told, {x, y, room, 0});
    y += mark_height(ui, told, room);
  }
  if (row.card->note.empty()) return;
  draw_text(ui, body_type(ui), row.card->note, wrapped(ui, body_type(ui), row.card->note, room),
            {.x = x, .y = y, .colour = ui.palette().ink});
}

struct MoveButton {
  const char* part = "";
  const std::string* pattern = nullptr;
  Icon icon = Icon::up;
  bool can = true;
  Rect rect;
};

bool draw_move(Ui& ui, const OrderRow& row, const MoveButton& button, float slide) {
  const Palette& p = ui.palette();
  const std::string id = joined(row.id, button.part);
  const Response answer = respond(ui, id, button.rect, button.can);
  Rect drawn = button.rect;
  drawn.y += slide;
  const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.card;
  if (button.can) draw_box(ui.draw_list(), drawn, {ground, p.edge, k_edge_px, drawn.h / 2});
  draw_icon(ui.draw_list(), button.icon, shrunk(drawn, drawn.w * 0.27F),
            button.can ? p.main : p.rule);
  record(ui, {.id = id,
              .role = shell::Role::button,
              .name = worded(*button.pattern, row, row.place),
              .disabled = !button.can,
              .rect = button.rect});
  return answer.activated;
}

// The two buttons' left top corner.
Rect moves_rect(const Ui& ui, const OrderRow& row) {
  const float right = row.rect.x + row.rect.w - k_pad_px - moves_px(ui);
  const float x = moves_at_left(ui) ? row.rect.x + k_pad_px : right;
  const float y = moves_beside(ui) ? row.rect.y + std::round((row.rect.h - move_px(ui)) / 2)
                                   : row.rect.y + row.rect.h - move_px(ui) - 8;
  return {x, y, moves_px(ui), move_px(ui)};
}

// The part of the card that picks it up: all but the move buttons.
Rect body_rect(const Ui& ui, const OrderRow& row) {
  if (row.locked) return row.rect;
  Rect body = row.rect;
  if (moves_beside(ui)) {
    const float taken = moves_px(ui) + k_pad_px + 8;
    body.w -= taken;
    if (moves_at_left(ui)) body.x += taken;
  } else {
    body.h -= move_px(ui) + 16;
  }
  return body;
}

const std::string& pick_pattern(const Words& w, const OrderRow& row) {
  if (row.picked) return w.put_back;
  return row.other_picked ? w.put_here : w.pick_up;
}

// Slides from where the card lay; the mirror and the pointer already know the new place.
float slide_of(Ui& ui, const OrderRow& row) {
  State& s = ui.state();
  const auto found = s.slides.find(row.id);
  if (found == s.slides.end()) return 0;
  const float left = 1 - ui.ease(row.id, true);
  if (left <= 0) {
    s.slides.erase(found);
    return 0;
  }
  return found->second * left;
}

}  // namespace

float order_row_height(Ui& ui, const OrderCard& card, bool locked) {
  const float words = words_height(ui, card, locked) + 2 * k_pad_px;
  if (locked) return std::max(k_answer_px, words);
  if (moves_beside(ui)) return std::max({k_answer_px, move_px(ui) + 16, words});
  return std::max(k_target_px + 16, words + 8) + move_px(ui);
}

OrderAct draw_order_row(Ui& ui, const OrderRow& row) {
  const Words& w = ui.words();
  const float slide = row.locked ? 0 : slide_of(ui, row);
  const Rect body = body_rect(ui, row);
  const std::string pick = joined(row.id, "pick");
  const Response answer = respond(ui, pick, body, !row.locked);
  Rect drawn = row.rect;
  drawn.y += slide;
  draw_box(ui.draw_list(), drawn, box_of(ui.palette(), row, answer));
  Rect words = drawn;
  if (!row.locked && !moves_beside(ui)) words.h = body.h + 8;
  if (!row.locked && moves_beside(ui) && moves_at_left(ui)) words.x += moves_px(ui) + k_pad_px;
  draw_number(ui, row, words);
  draw_words(ui, row, words);
  record(ui, {.id = row.id,
              .role = shell::Role::list_item,
              .name = row.locked ? row.card->label : "",
              .value = row.locked ? "" : row.card->label,  // for reading aloud
              .position = row.place,
              .set_size = row.count,
              .rect = row.rect});
  if (row.locked) return OrderAct::none;
  const Inside inside(ui, row.id);
  record(ui, {.id = pick,
              .role = shell::Role::button,
              .name = worded(pick_pattern(w, row), row, row.place),
              .current = row.picked,
              .rect = body});
  auto act = answer.activated ? OrderAct::pick : OrderAct::none;
  const Rect moves = moves_rect(ui, row);
  const float size = move_px(ui);
  const Rect up{moves.x, moves.y, size, size};
  const Rect down{moves.x + size + 8, moves.y, size, size};
  if (draw_move(ui, row, {"up", &w.move_up, Icon::up, row.place > 1, up}, slide))
    act = OrderAct::up;
  if (draw_move(ui, row, {"down", &w.move_down, Icon::down, row.place < row.count, down}, slide)) {
    act = OrderAct::down;
  }
  return act;
}

}  // namespace rehale::kit
