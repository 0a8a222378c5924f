#include "web/kit/choices.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/mark.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

constexpr float k_row_gap_px = 12, k_pad_x_px = 20, k_pad_y_px = 16, k_inner_gap_px = 16;

struct Row {
  std::string id;
  bool many = false;
  bool chosen = false;
  bool locked = false;
};

float spot_px(const Ui& ui) { return roomy(ui, 28); }

float pad_x(const Ui& ui) { return column_width(ui) < 340 ? 12.0F : k_pad_x_px; }

float label_px(const Ui& ui) {
  return column_width(ui) - 2 * pad_x(ui) - spot_px(ui) - k_inner_gap_px;
}

float row_height(Ui& ui, const Choice& choice) {
  const float room = label_px(ui);
  float height =
      wrapped(ui, fitted(ui, body_type(ui), choice.label, room), choice.label, room).height;
  const std::string& told = mark_words(ui.words(), choice.mark, choice.mark_words);
  if (!told.empty()) height += 4 + mark_height(ui, told, room);
  if (!choice.note.empty()) height += 4 + wrapped(ui, body_type(ui), choice.note, room).height;
  return std::max(k_answer_px, height + 2 * k_pad_y_px);
}

void draw_round_spot(Ui& ui, Rect spot, Colour colour, float filled) {
  ImDrawList* list = ui.draw_list();
  const float radius = spot.w / 2;
  const ImVec2 middle{spot.x + radius, spot.y + radius};
  list->AddCircle(middle, radius - 1, packed(colour), 0, filled > 0 ? 3.0F : k_edge_px);
  if (filled > 0) list->AddCircleFilled(middle, (radius - 7) * filled, packed(colour));
}

void draw_square_spot(Ui& ui, Rect spot, Colour colour, float filled) {
  ImDrawList* list = ui.draw_list();
  if (filled <= 0) {
    draw_box(list, spot, {ui.palette().card, colour, k_edge_px, 7});
    return;
  }
  fill_box(list, spot, colour, 7);
  const float s = spot.w;
  const ImVec2 tick[3] = {{spot.x + s * 0.24F, spot.y + s * 0.53F},
                          {spot.x + s * 0.43F, spot.y + s * 0.71F},
                          {spot.x + s * 0.77F, spot.y + s * 0.31F}};
  list->AddPolyline(tick, 3, packed(ui.palette().on_main), ImDrawFlags_None, s * 0.13F);
}

Box box_of(const Palette& p, const Row& row, Mark mark, const Response& answer) {
  if (mark == Mark::going_well || mark == Mark::to_mend) {
    const MarkLook look = mark_look(p, mark);
    return {look.wash, look.colour, k_edge_chosen_px};
  }
  if (mark == Mark::missed) return {p.card, p.main, k_edge_px};
  if (row.chosen) return {p.main_wash, p.main, k_edge_chosen_px};
  if (answer.pressed) return {p.row_press, p.main, k_edge_px};
  return {answer.hovered ? p.row_hover : p.card, p.edge, k_edge_px};
}

void draw_row_words(Ui& ui, const Choice& choice, Rect rect) {
  const float room = label_px(ui);
  const float x = rect.x + pad_x(ui) + spot_px(ui) + k_inner_gap_px;
  const TypeStyle type = fitted(ui, body_type(ui), choice.label, room);
  const TextBlock& label = wrapped(ui, type, choice.label, room);
  const float needed = row_height(ui, choice) - 2 * k_pad_y_px;
  const bool alone = choice.mark == Mark::none && choice.note.empty();
  float y = alone ? rect.y + (rect.h - label.height) / 2 : rect.y + (rect.h - needed) / 2;
  draw_text(ui, type, choice.label, label, {.x = x, .y = y, .colour = ui.palette().ink});
  y += label.height + 4;
  const std::string& told = mark_words(ui.words(), choice.mark, choice.mark_words);
  if (!told.empty()) {
    draw_mark(ui, mark_look(ui.palette(), choice.mark), told, {x, y, room, 0});
    y += mark_height(ui, told, room) + 4;
  }
  if (choice.note.empty()) return;
  draw_text(ui, body_type(ui), choice.note, wrapped(ui, body_type(ui), choice.note, room),
            {.x = x, .y = y, .colour = ui.palette().ink});
}

void draw_row_spot(Ui& ui, const Row& row, const Choice& choice, Rect rect) {
  const Palette& p = ui.palette();
  const float size = spot_px(ui);
  const Rect spot{rect.x + pad_x(ui), std::round(rect.y + (rect.h - size) / 2), size, size};
  const Colour tone = choice.mark == Mark::none ? p.main : mark_look(p, choice.mark).colour;
  const Colour colour = row.chosen ? tone : p.edge;
  if (row.many) {
    draw_square_spot(ui, spot, colour, row.chosen ? 1.0F : 0.0F);
  } else {
    draw_round_spot(ui, spot, colour, row.chosen ? 1.0F : 0.0F);
  }
}

void tell_row(Ui& ui, const Row& row, const Choice& choice, Rect rect) {
  std::string told = mark_words(ui.words(), choice.mark, choice.mark_words);
  if (!choice.note.empty()) told += (told.empty() ? "" : ". ") + choice.note;
  record(ui, {.id = row.id,
              .role = row.many ? shell::Role::checkbox : shell::Role::radio,
              .name = choice.label,
              .description = told,
              .language = choice.language,
              .checked = row.chosen,
              .disabled = row.locked,
              .rect = rect});
}

bool draw_row(Ui& ui, const Row& row, const Choice& choice, Rect rect) {
  const Response answer = respond(ui, row.id, rect, !row.locked);
  draw_box(ui.draw_list(), rect, box_of(ui.palette(), row, choice.mark, answer));
  draw_row_spot(ui, row, choice, rect);
  draw_row_words(ui, choice, rect);
  tell_row(ui, row, choice, rect);
  return answer.activated;
}

// Index of the row activated in this frame, or -1.
int draw_rows(Ui& ui, const Choices& choices, bool many, const std::vector<bool>& chosen) {
  float height = -k_row_gap_px;
  for (const Choice& choice : choices.options) height += row_height(ui, choice) + k_row_gap_px;
  Rect rect = place(ui, height, 20);
  record(ui, {.id = choices.id,
              .role = many ? shell::Role::group : shell::Role::radio_group,
              .name = choices.name,
              .rect = rect});
  const Inside inside(ui, choices.id);
  int pressed = -1;
  for (std::size_t n = 0; n < choices.options.size(); ++n) {
    const Choice& choice = choices.options[n];
    rect.h = row_height(ui, choice);
    const Row row{joined(choices.id, choice.id), many, chosen[n], choices.locked};
    if (draw_row(ui, row, choice, rect)) pressed = static_cast<int>(n);
    rect.y += rect.h + k_row_gap_px;
  }
  return pressed;
}

}  // namespace

int one_of(Ui& ui, const Choices& choices, int chosen) {
  std::vector<bool> marks(choices.options.size(), false);
  if (chosen >= 0) marks[static_cast<std::size_t>(chosen)] = true;
  const int pressed = draw_rows(ui, choices, false, marks);
  if (pressed >= 0) want_frame(ui);
  return pressed >= 0 ? pressed : chosen;
}

std::vector<bool> several_of(Ui& ui, const Choices& choices, std::vector<bool> chosen) {
  CHECK(chosen.size() == choices.options.size(), "one flag an option");
  const int pressed = draw_rows(ui, choices, true, chosen);
  if (pressed < 0) return chosen;
  want_frame(ui);
  const auto at = static_cast<std::size_t>(pressed);
  chosen[at] = !chosen[at];
  return chosen;
}

}  // namespace rehale::kit
