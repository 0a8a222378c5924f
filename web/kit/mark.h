// A mark told by word, shape and colour: "You have this" with a leaf tick, "To do better" with a
// spanner. For files of web/kit only.
#pragma once

#include <string>

#include "web/kit/choices.h"
#include "web/kit/icons.h"
#include "web/kit/widget.h"

namespace rehale::kit {

struct MarkLook {
  Icon icon = Icon::none;
  Colour colour, wash;
};
MarkLook mark_look(const Palette& palette, Mark mark);
std::string mark_words(const Words& words, Mark mark, const std::string& instead);

// Icon and bold words in a line at (x, y); returns the height it takes.
float mark_height(Ui& ui, const std::string& words, float width_px);
void draw_mark(Ui& ui, const MarkLook& look, const std::string& words, Rect place);

}  // namespace rehale::kit
