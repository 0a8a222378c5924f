// The table beside the dots: one row a place, one column a body.
#include <algorithm>
#include <cstddef>

#include "web/kit/body_dots.h"
#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

struct Columns {
  float first_px, other_px;
};

Columns columns_of(const Ui& ui, const DotsTable& table) {
  const float width = column_width(ui);
  const auto others = static_cast<float>(table.columns.size());
  const float other = std::min(width * .26F, scaled(ui, 120));
  return {width - others * other, other};
}

void words_at(Ui& ui, TypeStyle style, const std::string& words, Rect place) {
  const TypeStyle used = fitted(ui, style, words, place.w);
  const TextBlock& block = wrapped(ui, used, words, place.w);
  draw_text(
      ui, used, words, block,
      {.x = place.x, .y = place.y + (place.h - block.height) / 2, .colour = ui.palette().ink});
}

float row_height(Ui& ui, TypeStyle style, const std::string& words, float width_px) {
  const TypeStyle used = fitted(ui, style, words, width_px);
  return wrapped(ui, used, words, width_px).height + 8;
}

void head_row(Ui& ui, const DotsTable& table, const Columns& at) {
  const TypeStyle style = caption_type(ui, Face::bold);
  float height = 0;
  for (std::size_t n = 0; n < table.heads.size(); ++n) {
    height = std::max(
        height, row_height(ui, style, table.heads[n], n == 0 ? at.first_px : at.other_px - 8));
  }
  const Rect row = place(ui, height, 16);
  const std::string id = joined(table.id, "heads");
  record(ui, {.id = id, .role = shell::Role::row, .rect = row});
  const Inside inside(ui, id);
  float x = row.x;
  for (std::size_t n = 0; n < table.heads.size(); ++n) {
    const float width = n == 0 ? at.first_px : at.other_px;
    const Rect cell{x, row.y, width - 8, row.h};
    words_at(ui, style, table.heads[n], cell);
    record(ui, {.id = joined(id, std::to_string(n)),
                .role = shell::Role::column_head,
                .name = table.heads[n],
                .rect = cell});
    x += width;
  }
}

void place_row(Ui& ui, const DotsTable& table, const Columns& at, std::size_t n) {
  const float mark = scaled(ui, 26);
  const std::string& words = table.places[n];
  const Rect row = place(ui, row_height(ui, body_type(ui), words, at.first_px - mark - 8), 0);
  const std::string id = joined(table.id, std::to_string(n));
  fill_box(ui.draw_list(), {row.x, row.y, row.w, 1}, ui.palette().rule, 0);
  record(ui, {.id = id, .role = shell::Role::row, .rect = row});
  const Inside inside(ui, id);
  draw_dot(ui, static_cast<DotPlace>(n), row.x + mark * .35F, row.y + row.h / 2, scaled(ui, 6));
  const Rect head{row.x + mark, row.y, at.first_px - mark - 8, row.h};
  words_at(ui, body_type(ui), words, head);
  record(ui,
         {.id = joined(id, "head"), .role = shell::Role::row_head, .name = words, .rect = head});
  float x = row.x + at.first_px;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const std::string number = std::to_string(table.columns[c][n]);
    const Rect cell{x, row.y, at.other_px - 8, row.h};
    words_at(ui, bold_type(ui), number, cell);
    record(ui, {.id = joined(id, std::to_string(c)),
                .role = shell::Role::cell,
                .name = number,
                .rect = cell});
    x += at.other_px;
  }
}

}  // namespace

void dots_table(Ui& ui, const DotsTable& table) {
  const Columns at = columns_of(ui, table);
  const Rect top = place(ui, 0, 8);
  record(ui, {.id = table.id, .role = shell::Role::table, .name = table.name, .rect = top});
  const std::size_t node = ui.state().nodes.size() - 1;
  {
    const Inside inside(ui, table.id);
    head_row(ui, table, at);
    for (std::size_t n = 0; n < table.places.size(); ++n) place_row(ui, table, at, n);
  }
  const Rect end = place(ui, 0, 8);
  ui.state().nodes[node].rect.h = end.y - top.y;
}

}  // namespace rehale::kit
