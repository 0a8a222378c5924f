// Put cards in order: Move up / Move down on each card, or tap a card and then tap its place. Undo.
// Nothing needs dragging. The caller keeps the order; a call takes it and gives the new one back.
#pragma once

#include <string>
#include <vector>

#include "web/kit/choices.h"
#include "web/kit/ui.h"

namespace rehale::kit {

struct OrderCard {
  std::string id;
  std::string label;
  Mark mark = Mark::none;  // after the reveal
  std::string note;
};

struct Ordering {
  std::string id;
  std::string name;  // the question
  std::vector<OrderCard>
      cards;  // in the order they lie now (the first frame: shuffled by the caller)
  bool locked = false;
};

struct OrderResult {
  std::vector<std::string> order;  // card ids as they lie after this frame
  bool moved = false;              // this frame
};

OrderResult ordering(Ui& ui, const Ordering& ordering);

}  // namespace rehale::kit
