#include "web/kit/cards.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/kit/mark.h"
#include "web/kit/text.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

constexpr float k_guess_px = 80;

float pad_px(const Ui& ui) { return column_width(ui) < 340 ? 16.0F : 24.0F; }

MarkLook tone_look(const Palette& p, Tone tone) {
  switch (tone) {
    case Tone::going_well:
      return mark_look(p, Mark::going_well);
    case Tone::to_mend:
      return mark_look(p, Mark::to_mend);
    case Tone::caution:
      return {Icon::caution, p.ink, p.highlight};
    case Tone::plain:
      break;
  }
  return {Icon::none, p.rule, p.card};
}

const std::string& tone_words(const Words& w, const Card& card) {
  if (!card.label.empty()) return card.label;
  switch (card.tone) {
    case Tone::going_well:
      return w.going_well;
    case Tone::to_mend:
      return w.to_mend;
    case Tone::caution:
      return w.caution;
    case Tone::plain:
      break;
  }
  return card.label;
}

void draw_label(Ui& ui, const Card& card, const MarkLook& look) {
  const std::string& words = tone_words(ui.words(), card);
  if (words.empty()) return;
  const float height = mark_height(ui, words, column_width(ui));
  const Rect row = place(ui, height, 0);
  const MarkLook told =
      look.icon == Icon::none ? MarkLook{Icon::none, ui.palette().ink, look.wash} : look;
  draw_mark(ui, told, words, row);
  record(
      ui,
      {.id = joined(card.id, "label"), .role = shell::Role::paragraph, .name = words, .rect = row});
}

}  // namespace

void begin_card(Ui& ui, const Card& card) {
  State& s = ui.state();
  CHECK(!s.card.open, "cards do not nest");
  const MarkLook look = tone_look(ui.palette(), card.tone);
  const float pad = pad_px(ui);
  const Rect top = place(ui, 0, 24);
  CardState& now = s.card;
  now.open = true;
  now.id = card.id;
  now.top = top.y;
  now.guessed_px = k_guess_px;
  now.middle = top.y + k_guess_px / 2;
  now.outer = s.column;
  now.ground = s.ground;
  now.node = s.nodes.size();
  now.first_vertex = vertex_count(s.list);
  draw_box(s.list, {top.x, top.y, top.w, k_guess_px}, {look.wash, look.colour});
  now.last_vertex = vertex_count(s.list);
  s.ground = look.wash;
  record(ui, {.id = card.id,
              .role = shell::Role::group,
              .name = tone_words(ui.words(), card),
              .rect = top});
  now.parent = std::exchange(s.parent, card.id);
  s.column = {top.x + pad, top.w - 2 * pad, top.y + pad, true};
  draw_label(ui, card, look);
}

void end_card(Ui& ui) {
  State& s = ui.state();
  CardState& now = s.card;
  CHECK(now.open, "end_card has its begin_card");
  const float inner = s.column.width;
  s.column.y += (now.outer.width - inner) / 2;
  const float height = std::round(s.column.y - now.top);
  // The ground was drawn before its height was known: pull its lower half down.
  stretch_down(s.list, {now.first_vertex, now.last_vertex}, now.middle, height - now.guessed_px);
  s.nodes[now.node].rect.h = height;
  s.parent = now.parent;
  s.ground = now.ground;
  now.outer.y = now.top + height;
  s.column = now.outer;
  now.open = false;
}

bool disclosure(Ui& ui, const Disclosure& disclosure, bool open) {
  const float icon = scaled(ui, 20);
  const float room = column_width(ui) - icon - 8;
  const TextBlock& block = wrapped(ui, bold_type(ui), disclosure.label, room);
  const Rect row = place(ui, std::max(k_target_px, block.height + 12), 8);
  const Rect rect{row.x, row.y, std::min(row.w, icon + 8 + block.width + 8), row.h};
  const Response answer = respond(ui, disclosure.id, rect);
  const Palette& p = ui.palette();
  const Colour colour = answer.hovered || answer.pressed ? p.ink : p.main;
  draw_icon(ui.draw_list(), open ? Icon::chevron_down : Icon::chevron_right,
            {rect.x, rect.y + (rect.h - icon) / 2, icon, icon}, colour);
  draw_text(ui, bold_type(ui), disclosure.label, block,
            {.x = rect.x + icon + 8, .y = rect.y + (rect.h - block.height) / 2, .colour = colour});
  record(ui, {.id = disclosure.id,
              .role = shell::Role::disclosure,
              .name = disclosure.label,
              .expanded = open,
              .rect = rect});
  if (answer.activated) want_frame(ui);
  return answer.activated ? !open : open;
}

void notice(Ui& ui, std::string_view id, std::string_view text) {
  const Palette& p = ui.palette();
  const float icon = scaled(ui, 28);
  const float pad = 16;
  const float room = column_width(ui) - 3 * pad - icon;
  const TypeStyle type = fitted(ui, body_type(ui), text, room);
  const TextBlock& block = wrapped(ui, type, text, room);
  const Rect rect = place(ui, block.height + 2 * pad, 20);
  fill_box(ui.draw_list(), rect, p.highlight, k_corner_px);
  draw_icon(ui.draw_list(), Icon::caution,
            {rect.x + pad, rect.y + pad + (block.line_px - icon) / 2, icon, icon}, p.ink);
  draw_text(ui, type, text, block,
            {.x = rect.x + 2 * pad + icon, .y = rect.y + pad, .colour = p.ink});
  record(ui, {.id = std::string(id),
              .role = shell::Role::paragraph,
              .name = std::string(text),
              .rect = rect});
}

}  // namespace rehale::kit
