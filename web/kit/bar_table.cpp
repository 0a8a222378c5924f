#include "web/kit/bar_table.h"

#include <imgui.h>

#include <algorithm>

#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_bar_px = 26, k_bars_apart_px = 6, k_row_gap_px = 22, k_hatch_px = 9;

float at(Rect track, double share) {
  return track.x + track.w * static_cast<float>(std::clamp(share, 0.0, 1.0));
}

// Slanted lines instead of a fill.
void draw_hatch(Ui& ui, Rect bar) {
  ImDrawList* list = ui.draw_list();
  const unsigned ink = packed(ui.palette().main);
  list->PushClipRect({bar.x, bar.y}, {bar.x + bar.w, bar.y + bar.h}, true);
  for (float x = bar.x - bar.h; x < bar.x + bar.w; x += k_hatch_px) {
    list->AddLine({x, bar.y + bar.h}, {x + bar.h, bar.y}, ink, 2);
  }
  list->PopClipRect();
  list->AddRect({bar.x, bar.y}, {bar.x + bar.w, bar.y + bar.h}, ink, 0, 0, 2);
}

// Ink with paper around it: it stands out on the bar and beside it.
void draw_whisker(Ui& ui, const Bar& bar, Rect track) {
  ImDrawList* list = ui.draw_list();
  const float low = at(track, bar.low), high = at(track, bar.high);
  const float middle = track.y + track.h / 2, tick = track.h * .3F;
  const auto strokes = [&](Colour colour, float width) {
    const unsigned ink = packed(colour);
    list->AddLine({low, middle}, {high, middle}, ink, width);
    for (const float x : {low, high}) {
      list->AddLine({x, middle - tick}, {x, middle + tick}, ink, width);
    }
  };
  strokes(ui.palette().paper, 8);
  strokes(ui.palette().ink, 3);
}

void draw_bar(Ui& ui, const Bar& bar, Rect track) {
  const Palette& p = ui.palette();
  fill_box(ui.draw_list(), track, p.row_press, 0);
  const Rect filled{track.x, track.y, at(track, bar.share) - track.x, track.h};
  if (filled.w >= 1) {
    if (bar.hatched) draw_hatch(ui, filled);
    else fill_box(ui.draw_list(), filled, p.main, 0);
  }
  ui.draw_list()->AddRect({track.x, track.y}, {track.x + track.w, track.y + track.h},
                          packed(p.edge), 0, 0, 2);
  if (bar.low < bar.high) draw_whisker(ui, bar, track);
}

struct Words {
  TypeStyle type;
  const TextBlock* block;
};

Words words_of(Ui& ui, TypeStyle style, const std::string& words, float width_px) {
  const TypeStyle type = fitted(ui, style, words, width_px);
  return {type, &wrapped(ui, type, words, width_px)};
}

float rows_px(Ui& ui, const BarRow& row, float width_px) {
  float height = words_of(ui, bold_type(ui), row.label, width_px).block->height;
  height += static_cast<float>(row.bars.size()) * (k_bar_px + k_bars_apart_px);
  for (const std::string& line : row.words) {
    height += words_of(ui, body_type(ui), line, width_px).block->height;
  }
  return height + 4;
}

// Places of the cells: equal parts of the room below the label, so that a finger or a reader's
// cursor on a number is on its row.
void record_cells(Ui& ui, const BarRow& row, const std::string& id, Rect room) {
  const float width = room.w / static_cast<float>(std::max<std::size_t>(1, row.cells.size()));
  for (std::size_t n = 0; n < row.cells.size(); ++n) {
    record(ui, {.id = joined(id, std::to_string(n)),
                .role = shell::Role::cell,
                .name = row.cells[n],
                .rect = {room.x + static_cast<float>(n) * width, room.y, width, room.h}});
  }
}

void draw_row(Ui& ui, const BarTable& table, const BarRow& row) {
  const Rect whole = place(ui, rows_px(ui, row, column_width(ui)), k_row_gap_px);
  const std::string id = joined(table.id, row.id);
  record(ui, {.id = id, .role = shell::Role::row, .rect = whole});
  const Inside inside(ui, id);
  const Palette& p = ui.palette();
  const Words label = words_of(ui, bold_type(ui), row.label, whole.w);
  draw_text(ui, label.type, row.label, *label.block, {.x = whole.x, .y = whole.y, .colour = p.ink});
  const Rect head{whole.x, whole.y, whole.w, label.block->height};
  record(
      ui,
      {.id = joined(id, "head"), .role = shell::Role::row_head, .name = row.label, .rect = head});
  float y = head.y + head.h + 4;
  for (const Bar& bar : row.bars) {
    draw_bar(ui, bar, {whole.x, y, whole.w, k_bar_px});
    y += k_bar_px + k_bars_apart_px;
  }
  for (const std::string& line : row.words) {
    const Words words = words_of(ui, body_type(ui), line, whole.w);
    draw_text(ui, words.type, line, *words.block, {.x = whole.x, .y = y, .colour = p.ink});
    y += words.block->height;
  }
  record_cells(ui, row, id, {whole.x, head.y + head.h, whole.w, whole.h - head.h});
}

// Heard, not seen: the words below each bar say what the numbers are.
void record_heads(Ui& ui, const BarTable& table) {
  const Rect row = place(ui, 1, 8);
  const std::string id = joined(table.id, "heads");
  record(ui, {.id = id, .role = shell::Role::row, .rect = row});
  const Inside inside(ui, id);
  const float width = row.w / static_cast<float>(table.heads.size());
  for (std::size_t n = 0; n < table.heads.size(); ++n) {
    record(ui, {.id = joined(id, std::to_string(n)),
                .role = shell::Role::column_head,
                .name = table.heads[n],
                .rect = {row.x + static_cast<float>(n) * width, row.y, width, row.h}});
  }
}

}  // namespace

void bar_table(Ui& ui, const BarTable& table) {
  const Rect top = place(ui, 0, 8);
  const std::size_t node = ui.state().nodes.size();
  record(ui, {.id = table.id, .role = shell::Role::table, .name = table.name, .rect = top});
  {
    const Inside inside(ui, table.id);
    record_heads(ui, table);
    for (const BarRow& row : table.rows) draw_row(ui, table, row);
  }
  const Rect end = place(ui, 0, 8);
  ui.state().nodes[node].rect.h = end.y - top.y;
}

}  // namespace rehale::kit
