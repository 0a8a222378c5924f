// Rows of numbers, drawn large: a label, bars from 0 to 1 with their interval as a whisker, the
// numbers in words below. A real table in the mirror: the same numbers, one cell a column. Told by
// length, hatch and words, never by colour alone. Must not know what is counted.
#pragma once

#include <string>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

struct Bar {
  double share = 0, low = 0, high = 0;  // 0…1; low < high: a whisker
  bool hatched = false;                 // the earlier one of two
};
struct BarRow {
  std::string id;
  std::string label;
  std::vector<Bar> bars;           // none: there are only words
  std::vector<std::string> words;  // lines below the bars
  std::vector<std::string> cells;  // one for each head after the first
};
struct BarTable {
  std::string id;
  std::string name;                // of the table
  std::vector<std::string> heads;  // of the label, then of the cells
  std::vector<BarRow> rows;
};
void bar_table(Ui& ui, const BarTable& table);

}  // namespace rehale::kit
