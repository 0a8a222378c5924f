// A region that scrolls by finger (with a short glide), wheel and keys, and brings focused things
// into view. For files of web/kit only. Must not know screens or dialogs, its two users.
#pragma once

#include <string_view>

#include "web/kit/state.h"

namespace rehale::kit {

struct AreaPlan {
  std::string_view key;    // another key starts at the top
  Rect view;               // what can be seen
  float x = 0, width = 0;  // the column inside
  float pad_top = 0;
};
// Opens the area: clips, sets the column, moves by what the person did.
void begin_area(Ui& ui, ScrollArea& area, const AreaPlan& plan);

// Sits the content (pushed `lean` of the free room down, 0 = top), clamps, brings focused nodes
// into view and draws the edge that says "more". Call with the column after the last widget.
struct AreaEnd {
  float lean = 0;
  float pad_bottom = 0;
  float mark_x = 0;  // where the thin scroll mark stands
};
void end_area(Ui& ui, ScrollArea& area, const AreaEnd& end);

}  // namespace rehale::kit
