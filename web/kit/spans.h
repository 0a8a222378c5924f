// What was measured, drawn over what is wanted: one row each, in words as well. Must not know what
// is measured.
#pragma once

#include <string>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

struct Span {
  std::string id;
  std::string label;  // "Breathe in slowly"
  std::string words;  // "1.2 seconds. Aim for 3 to 5 seconds."
  bool met = false;
  bool moment = false;  // a point on the line, not a length from 0
  double value = 0;
  double low = 0, high = 0;  // what counts as right; high infinite: open end
  double from = 0, to = 10;  // ends of the line
};

// A list in the mirror: "Breathe in slowly. 1.2 seconds. Aim for 3 to 5 seconds. To mend".
void spans(Ui& ui, std::string_view id, const std::vector<Span>& rows);

}  // namespace rehale::kit
