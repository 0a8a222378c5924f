#include "web/kit/spans.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/icons.h"
#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_track_px = 28, k_bar_px = 10, k_mark_px = 28, k_room_px = 12;

float place_on(const Span& span, Rect track, double value) {
  const double share = (value - span.from) / (span.to - span.from);
  return track.x + track.w * static_cast<float>(std::clamp(share, 0.0, 1.0));
}

// Wanted: a box with edges, open to the right when there is no upper end. Yours: a thick line from
// 0 with an end tick, or a diamond for a moment.
void draw_track(Ui& ui, const Span& span, Rect track) {
  const Palette& p = ui.palette();
  ImDrawList* list = ui.draw_list();
  const float middle = track.y + track.h / 2;
  const float low = place_on(span, track, span.low), high = place_on(span, track, span.high);
  fill_box(list, {low, track.y, std::max(4.0F, high - low), track.h}, p.highlight, 4);
  for (const float x : {low, high}) {
    if (x == high && std::isinf(span.high)) continue;
    list->AddLine({x, track.y}, {x, track.y + track.h}, packed(p.edge), 2);
  }
  const float zero = place_on(span, track, 0), end = place_on(span, track, span.value);
  list->AddLine({track.x, middle}, {track.x + track.w, middle}, packed(p.edge), 2);
  if (span.moment) {
    list->AddLine({zero, track.y - 2}, {zero, track.y + track.h + 2}, packed(p.ink), 2);
    list->AddNgonFilled({end, middle}, k_bar_px, packed(p.main), 4);
    return;
  }
  list->AddRectFilled({zero, middle - k_bar_px / 2}, {end, middle + k_bar_px / 2}, packed(p.main));
  list->AddLine({end, track.y}, {end, track.y + track.h}, packed(p.main), 4);
}

// The text's height; drawn when `at` is given.
float words_px(Ui& ui, TypeStyle type, const std::string& text, float width, const Rect* at) {
  const TextBlock& block = wrapped(ui, type, text, width);
  if (at != nullptr)
    draw_text(ui, type, text, block, {.x = at->x, .y = at->y, .colour = ui.palette().ink});
  return block.height;
}

void draw_row(Ui& ui, std::string_view list, const Span& span, const Words& w) {
  const TypeStyle bold = bold_type(ui), plain = body_type(ui);
  const float width = column_width(ui) - k_mark_px - k_room_px;
  const float label = words_px(ui, bold, span.label, width, nullptr);
  const float words = words_px(ui, plain, span.words, width, nullptr);
  const Rect row = place(ui, label + words + k_track_px + 14, 16);
  Rect line{row.x + k_mark_px + k_room_px, row.y, width, label};
  const Palette& p = ui.palette();
  draw_icon(ui.draw_list(), span.met ? Icon::going_well : Icon::to_mend,
            {row.x, row.y + 2, k_mark_px, k_mark_px}, span.met ? p.well : p.mend);
  words_px(ui, bold, span.label, width, &line);
  line.y += label;
  words_px(ui, plain, span.words, width, &line);
  draw_track(ui, span, {line.x, line.y + words + 6, width, k_track_px});
  const std::string& mark = span.met ? w.going_well : w.to_mend;
  record(ui, {.id = joined(list, span.id),
              .role = shell::Role::list_item,
              .name = span.label + ". " + span.words + ' ' + mark + '.',
              .rect = row});
}

}  // namespace

void spans(Ui& ui, std::string_view id, const std::vector<Span>& rows) {
  const std::size_t list = ui.state().nodes.size();
  record(ui, {.id = std::string(id), .role = shell::Role::list});
  const float top = ui.state().column.y;
  {
    const Inside inside(ui, id);
    for (const Span& span : rows) draw_row(ui, id, span, ui.words());
  }
  const Column& column = ui.state().column;
  ui.state().nodes[list].rect = {column.x, top, column.width, column.y - top};
}

}  // namespace rehale::kit
