#include "web/kit/pads.h"

#include <algorithm>

#include "web/kit/button_face.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 12, k_before_px = 16, k_least_px = 72;

ButtonFace face_of(const Pad& pad) {
  return {.label = pad.label, .kind = pad.main ? ButtonKind::main : ButtonKind::quiet};
}

bool fit_in_pairs(const Ui& ui, const Pads& what) {
  const float each = (column_width(ui) - k_gap_px) / 2;
  return std::ranges::all_of(
      what.pads, [&](const Pad& pad) { return words_keep_size(ui, face_of(pad), each); });
}

struct Row {
  const Pads& what;
  std::size_t first, count;
};

Rect place_row(Ui& ui, const Row& row, float before_px) {
  const float width = column_width(ui);
  const float each = row.count == 1 ? width : (width - k_gap_px) / 2;
  float height = k_least_px;
  for (std::size_t n = 0; n < row.count; ++n)
    height = std::max(height, button_height(ui, face_of(row.what.pads[row.first + n]), each));
  Rect rect = place(ui, height, before_px);
  rect.w = each;
  return rect;
}

void draw_pad(Ui& ui, const Pads& what, std::size_t n, Rect rect, PadPress& press) {
  const Pad& pad = what.pads[n];
  const std::string id = joined(what.id, pad.id);
  const Response answer = respond(ui, id, rect);
  draw_button_face(ui, face_of(pad), rect, answer);
  record(ui, {.id = id,
              .role = shell::Role::button,
              .name = pad.name.empty() ? pad.label : pad.name,
              .rect = rect});
  if (answer.activated) press.activated = static_cast<int>(n);
  if (answer.pressed) press.down = static_cast<int>(n);
}

}  // namespace

PadPress pads(Ui& ui, const Pads& what) {
  PadPress press;
  const std::size_t group = ui.state().nodes.size();
  record(ui, {.id = what.id, .role = shell::Role::group, .name = what.name});
  const float top = ui.state().column.y;
  {
    const Inside inside(ui, what.id);
    // A lone last pad, and a filled one ahead of others, has the row to itself; where large words
    // would have to shrink, each.
    const bool pairs = fit_in_pairs(ui, what);
    std::size_t n = 0;
    while (n < what.pads.size()) {
      const bool alone = !pairs || what.pads[n].main || n + 1 == what.pads.size();
      const Row row{what, n, alone ? 1U : 2U};
      Rect rect = place_row(ui, row, n == 0 ? k_before_px : k_gap_px);
      for (std::size_t k = 0; k < row.count; ++k) {
        draw_pad(ui, what, n + k, rect, press);
        rect.x += rect.w + k_gap_px;
      }
      n += row.count;
    }
  }
  const Column& column = ui.state().column;
  ui.state().nodes[group].rect = {column.x, top, column.width, column.y - top};
  return press;
}

bool finger_down(const Ui& ui) { return ui.state().pointer.down; }

}  // namespace rehale::kit
