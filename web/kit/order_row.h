// One card of an ordering: how it looks, what can be done with it. For ordering.cpp only.
#pragma once

#include <string>

#include "web/kit/ordering.h"

namespace rehale::kit {

struct OrderRow {
  const OrderCard* card = nullptr;
  std::string id;  // "<ordering>/<card>"
  int place = 1, count = 1;
  bool picked = false, other_picked = false, locked = false;
  Rect rect;
};

enum class OrderAct : unsigned char { none, up, down, pick };

float order_row_height(Ui& ui, const OrderCard& card, bool locked);
OrderAct draw_order_row(Ui& ui, const OrderRow& row);

}  // namespace rehale::kit
