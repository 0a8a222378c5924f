// Cards to pick one thing at once: picture left, words right; one or two columns.
#include <algorithm>
#include <cmath>
#include <string>

#include "web/kit/buttons.h"
#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 16, k_pad_px = 16;
constexpr float k_two_columns_px = 620;

float picture_px(const Ui& ui, float width) {
  return std::round(std::min(roomy(ui, 104), width * 0.34F));
}

float words_px(const Ui& ui, float width) { return width - 3 * k_pad_px - picture_px(ui, width); }

TypeStyle label_type(const Ui& ui, const PickCard& card, float width) {
  return fitted(ui, {Face::bold, scaled(ui, 22)}, card.label, words_px(ui, width));
}

TypeStyle tell_type(const Ui& ui, const PickCard& card, float width) {
  return fitted(ui, body_type(ui), card.tell, words_px(ui, width));
}

float words_height(Ui& ui, const PickCard& card, float width) {
  const float room = words_px(ui, width);
  const float label = wrapped(ui, label_type(ui, card, width), card.label, room).height;
  return label + (card.tell.empty()
                      ? 0
                      : 4 + wrapped(ui, tell_type(ui, card, width), card.tell, room).height);
}

float card_height(Ui& ui, const PickCard& card, float width) {
  return 2 * k_pad_px + std::max(picture_px(ui, width), words_height(ui, card, width));
}

void draw_words(Ui& ui, const PickCard& card, Rect rect) {
  const float room = words_px(ui, rect.w);
  const float x = rect.x + rect.w - k_pad_px - room;
  float y = rect.y + (rect.h - words_height(ui, card, rect.w)) / 2;
  const TypeStyle label = label_type(ui, card, rect.w);
  const TextBlock& name = wrapped(ui, label, card.label, room);
  draw_text(ui, label, card.label, name, {.x = x, .y = y, .colour = ui.palette().ink});
  y += name.height + 4;
  if (card.tell.empty()) return;
  const TypeStyle tell = tell_type(ui, card, rect.w);
  draw_text(ui, tell, card.tell, wrapped(ui, tell, card.tell, room),
            {.x = x, .y = y, .colour = ui.palette().soft_ink});
}

bool draw_card(Ui& ui, const std::string& id, const PickCard& card, Rect rect) {
  const Palette& p = ui.palette();
  const Response answer = respond(ui, id, rect);
  const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.card;
  draw_box(ui.draw_list(), rect, {ground, answer.pressed ? p.main : p.edge});
  const float side = picture_px(ui, rect.w);
  if (card.draw) {
    card.draw(ui, {rect.x + k_pad_px, std::round(rect.y + (rect.h - side) / 2), side, side});
  }
  draw_words(ui, card, rect);
  record(ui, {.id = id,
              .role = shell::Role::button,
              .name = card.label,
              .description = card.tell,
              .rect = rect});
  return answer.activated;
}

struct Plan {
  std::vector<Rect> cards;  // from the grid's left top corner
  float height = 0;
};

// One column: each as high as its words. Two: a row is as high as its highest card.
Plan plan_of(Ui& ui, const CardGrid& grid) {
  const bool two = column_width(ui) >= k_two_columns_px * ui.text_scale();
  const float width = two ? std::floor((column_width(ui) - k_gap_px) / 2) : column_width(ui);
  const std::size_t across = two ? 2 : 1;
  Plan plan;
  for (std::size_t n = 0; n < grid.cards.size(); n += across) {
    float height = 0;
    const std::size_t end = std::min(n + across, grid.cards.size());
    for (std::size_t m = n; m < end; ++m) {
      height = std::max(height, std::ceil(card_height(ui, grid.cards[m], width)));
    }
    for (std::size_t m = n; m < end; ++m) {
      const float x = m == n ? 0 : width + k_gap_px;
      plan.cards.push_back({x, plan.height, width, height});
    }
    plan.height += height + k_gap_px;
  }
  plan.height = std::max(0.0F, plan.height - k_gap_px);
  return plan;
}

}  // namespace

int card_grid(Ui& ui, const CardGrid& grid) {
  const Plan plan = plan_of(ui, grid);
  const Rect all = place(ui, plan.height, 24);
  record(ui, {.id = grid.id, .role = shell::Role::group, .name = grid.name, .rect = all});
  const Inside inside(ui, grid.id);
  int picked = -1;
  for (std::size_t n = 0; n < grid.cards.size(); ++n) {
    Rect rect = plan.cards[n];
    rect.x += all.x;
    rect.y += all.y;
    if (draw_card(ui, joined(grid.id, grid.cards[n].id), grid.cards[n], rect)) {
      picked = static_cast<int>(n);
    }
  }
  return picked;
}

}  // namespace rehale::kit
