#include "web/kit/mark.h"

namespace rehale::kit {
namespace {

float icon_px(const Ui& ui) { return scaled(ui, 22); }
float indent_px(const Ui& ui) { return icon_px(ui) + 8; }

}  // namespace

MarkLook mark_look(const Palette& p, Mark mark) {
  switch (mark) {
    case Mark::going_well:
      return {Icon::going_well, p.well, p.well_wash};
    case Mark::to_mend:
      return {Icon::to_mend, p.mend, p.mend_wash};
    case Mark::missed:
      return {Icon::ring, p.main, p.card};
    case Mark::none:
      break;
  }
  return {Icon::none, p.edge, p.card};
}

std::string mark_words(const Words& words, Mark mark, const std::string& instead) {
  if (!instead.empty()) return instead;
  switch (mark) {
    case Mark::going_well:
      return words.going_well;
    case Mark::to_mend:
      return words.to_mend;
    case Mark::missed:
      return words.missed;
    case Mark::none:
      break;
  }
  return instead;
}

float mark_height(Ui& ui, const std::string& words, float width_px) {
  return wrapped(ui, bold_type(ui), words, width_px - indent_px(ui)).height;
}

void draw_mark(Ui& ui, const MarkLook& look, const std::string& words, Rect at) {
  const TypeStyle type = bold_type(ui);
  const TextBlock& block = wrapped(ui, type, words, at.w - indent_px(ui));
  const float size = icon_px(ui);
  draw_icon(ui.draw_list(), look.icon, {at.x, at.y + (block.line_px - size) / 2, size, size},
            look.colour);
  draw_text(ui, type, words, block, {.x = at.x + indent_px(ui), .y = at.y, .colour = look.colour});
}

}  // namespace rehale::kit
