// One of several pictures: cards with the picture above and words below.
#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/mark.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 16, k_pad_px = 12;
constexpr float k_least_picture_px = 96;

struct Grid {
  int columns = 2, rows = 1;
  float width = 0, picture = 0, height = 0;
};

float words_px(const Ui& ui, const PictureChoice& option, const Grid& grid, TypeStyle& type) {
  const float room = grid.width - 2 * k_pad_px;
  type = fitted(ui, body_type(ui), option.label, room);
  return room;
}

float words_height(Ui& ui, const PictureChoice& option, const Grid& grid) {
  TypeStyle type;
  const float room = words_px(ui, option, grid, type);
  float height = wrapped(ui, type, option.label, room).height;
  const std::string& told = mark_words(ui.words(), option.mark, option.mark_words);
  if (!told.empty()) height += 4 + mark_height(ui, told, room);
  return height;
}

int columns_for(const Ui& ui, int options) {
  const float least_four = 160 * ui.text_scale();
  const float column = column_width(ui);
  const auto all = static_cast<float>(options);
  if (column >= all * least_four + (all - 1) * k_gap_px && ui.width_px() >= 600 &&
      (options < 4 || ui.width_px() > ui.height_px())) {
    return options;
  }
  return column >= 2 * 120 * std::min(ui.text_scale(), 1.25F) + k_gap_px ? 2 : 1;
}

// Pictures share the height that is left in view, so that the answers can be seen at once.
Grid grid_for(Ui& ui, const PictureChoices& choices) {
  Grid grid;
  const int options = static_cast<int>(choices.options.size());
  grid.columns = std::clamp(columns_for(ui, options), 1, std::max(1, options));
  grid.rows = (options + grid.columns - 1) / grid.columns;
  const auto across = static_cast<float>(grid.columns);
  grid.width = std::floor((column_width(ui) - k_gap_px * (across - 1)) / across);
  float words = 0;
  for (const PictureChoice& option : choices.options) {
    words = std::max(words, words_height(ui, option, grid));
  }
  const State& s = ui.state();
  const auto down = static_cast<float>(grid.rows);
  const float used = s.column.y - s.screen.words_top + 40;
  const float left = s.body.view.h - used - (down - 1) * k_gap_px;
  const float liked = (grid.width - 2 * k_pad_px) * (grid.columns == 1 ? 0.6F : 0.9F);
  grid.picture =
      std::clamp(left / down - words - 3 * k_pad_px, std::min(k_least_picture_px, liked), liked);
  grid.height = std::ceil(grid.picture + words + 3 * k_pad_px);
  return grid;
}

Box box_of(const Palette& p, Mark mark, bool chosen, const Response& answer) {
  if (mark == Mark::going_well || mark == Mark::to_mend) {
    const MarkLook look = mark_look(p, mark);
    return {look.wash, look.colour, k_edge_chosen_px};
  }
  if (chosen) return {p.main_wash, p.main, k_edge_chosen_px};
  if (answer.pressed) return {p.row_press, p.main};
  return {answer.hovered ? p.row_hover : p.card, mark == Mark::missed ? p.main : p.edge};
}

// The round mark of a radio, in the card's corner.
void draw_spot(Ui& ui, Rect card, bool chosen) {
  const Palette& p = ui.palette();
  const float radius = roomy(ui, 13);
  const ImVec2 middle{card.x + k_pad_px + radius, card.y + k_pad_px + radius};
  ui.draw_list()->AddCircleFilled(middle, radius, packed(p.card));
  ui.draw_list()->AddCircle(middle, radius - 1, packed(chosen ? p.main : p.edge), 0,
                            chosen ? 3.0F : k_edge_px);
  if (chosen) ui.draw_list()->AddCircleFilled(middle, radius - 6, packed(p.main));
}

void draw_words(Ui& ui, const PictureChoice& option, const Grid& grid, Rect card) {
  TypeStyle type;
  const float room = words_px(ui, option, grid, type);
  const TextBlock& label = wrapped(ui, type, option.label, room);
  float y = card.y + 2 * k_pad_px + grid.picture;
  const float x = card.x + k_pad_px;
  draw_text(ui, type, option.label, label,
            {.x = x, .y = y, .colour = ui.palette().ink, .align = Align::middle, .width = room});
  y += label.height + 4;
  const std::string& told = mark_words(ui.words(), option.mark, option.mark_words);
  if (!told.empty()) draw_mark(ui, mark_look(ui.palette(), option.mark), told, {x, y, room, 0});
}

struct Card {
  std::string id;
  bool chosen = false, locked = false;
  Rect rect;
};

bool draw_card(Ui& ui, const PictureChoice& option, const Grid& grid, const Card& card) {
  const Response answer = respond(ui, card.id, card.rect, !card.locked);
  draw_box(ui.draw_list(), card.rect, box_of(ui.palette(), option.mark, card.chosen, answer));
  const Rect picture{card.rect.x + k_pad_px, card.rect.y + k_pad_px, grid.width - 2 * k_pad_px,
                     grid.picture};
  if (option.draw) option.draw(ui, picture);
  draw_spot(ui, card.rect, card.chosen);
  draw_words(ui, option, grid, card.rect);
  record(ui, {.id = card.id,
              .role = shell::Role::radio,
              .name = option.label,
              .description = mark_words(ui.words(), option.mark, option.mark_words),
              .checked = card.chosen,
              .disabled = card.locked,
              .rect = card.rect});
  return answer.activated;
}

}  // namespace

int one_picture_of(Ui& ui, const PictureChoices& choices, int chosen) {
  const Grid grid = grid_for(ui, choices);
  const auto down = static_cast<float>(grid.rows);
  const Rect all = place(ui, down * grid.height + (down - 1) * k_gap_px, 20);
  record(ui,
         {.id = choices.id, .role = shell::Role::radio_group, .name = choices.name, .rect = all});
  const Inside inside(ui, choices.id);
  int now = chosen;
  for (int n = 0; n < static_cast<int>(choices.options.size()); ++n) {
    const PictureChoice& option = choices.options[static_cast<std::size_t>(n)];
    const int row = n / grid.columns;
    const int column = n % grid.columns;
    const Rect rect{all.x + static_cast<float>(column) * (grid.width + k_gap_px),
                    all.y + static_cast<float>(row) * (grid.height + k_gap_px), grid.width,
                    grid.height};
    const Card card{joined(choices.id, option.id), n == chosen, choices.locked, rect};
    if (draw_card(ui, option, grid, card)) now = n;
  }
  if (now != chosen) want_frame(ui);
  return now;
}

}  // namespace rehale::kit
