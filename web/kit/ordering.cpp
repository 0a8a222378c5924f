#include "web/kit/ordering.h"

#include <algorithm>
#include <utility>

#include "web/kit/buttons.h"
#include "web/kit/order_row.h"
#include "web/kit/widget.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 10;

using Order = std::vector<std::string>;

const OrderCard& card_of(const Ordering& ordering, const std::string& id) {
  const auto found = std::ranges::find(ordering.cards, id, &OrderCard::id);
  CHECK(found != ordering.cards.end(), "an order names its own cards");
  return *found;
}

struct Layout {
  std::vector<float> tops;  // from the list's top
  float height = 0;
};

Layout lay_out(Ui& ui, const Ordering& ordering, const Order& order) {
  Layout layout;
  for (const std::string& id : order) {
    layout.tops.push_back(layout.height);
    layout.height += order_row_height(ui, card_of(ordering, id), ordering.locked) + k_gap_px;
  }
  layout.height -= k_gap_px;
  return layout;
}

// Every card that changes its place glides to it.
void start_slides(Ui& ui, const Ordering& ordering, const Order& before, const Order& after) {
  if (ui.reduced_motion()) return;
  State& s = ui.state();
  const Layout old_layout = lay_out(ui, ordering, before);
  const Layout new_layout = lay_out(ui, ordering, after);
  for (std::size_t n = 0; n < after.size(); ++n) {
    const auto was = static_cast<std::size_t>(std::ranges::find(before, after[n]) - before.begin());
    if (was == n) continue;
    const std::string id = joined(ordering.id, after[n]);
    s.slides[id] = old_layout.tops[was] - new_layout.tops[n];
    s.eases[id] = {0, 1, s.now_ms};
  }
  want_frame(ui);
}

struct Move {
  std::size_t from = 0, to = 0;
};

Order moved(const Order& order, Move move) {
  Order next = order;
  std::string card = std::move(next[move.from]);
  next.erase(next.begin() + static_cast<std::ptrdiff_t>(move.from));
  next.insert(next.begin() + static_cast<std::ptrdiff_t>(move.to), std::move(card));
  return next;
}

Order make_move(Ui& ui, const Ordering& ordering, const Order& order, Move move) {
  State& s = ui.state();
  s.picked.erase(ordering.id);
  if (move.from == move.to) return order;
  Order next = moved(order, move);
  s.undo[ordering.id].push_back(order);
  start_slides(ui, ordering, order, next);
  ui.say(fill(ui.words().moved, {{"label", card_of(ordering, order[move.from]).label},
                                 {"place", std::to_string(move.to + 1)},
                                 {"count", std::to_string(order.size())}}));
  return next;
}

// The first tap picks a card up, the second says where it goes.
Order pick(Ui& ui, const Ordering& ordering, const Order& order, std::size_t row) {
  std::string& picked = ui.state().picked[ordering.id];
  const auto held = std::ranges::find(order, picked);
  if (held == order.end()) {
    picked = order[row];
    ui.say(ui.words().picked_hint);
    return order;
  }
  return make_move(ui, ordering, order, {static_cast<std::size_t>(held - order.begin()), row});
}

struct Done {
  OrderAct act = OrderAct::none;
  std::size_t row = 0;
};

Done draw_rows(Ui& ui, const Ordering& ordering, const Order& order) {
  const Layout layout = lay_out(ui, ordering, order);
  const Rect all = place(ui, layout.height, 20);
  record(ui, {.id = ordering.id, .role = shell::Role::list, .name = ordering.name, .rect = all});
  const Inside inside(ui, ordering.id);
  const std::string picked = ui.state().picked[ordering.id];
  Done done;
  for (std::size_t n = 0; n < order.size(); ++n) {
    const OrderCard& card = card_of(ordering, order[n]);
    const bool held = !ordering.locked && picked == order[n];
    const float height = order_row_height(ui, card, ordering.locked);
    const OrderRow row{&card,
                       joined(ordering.id, order[n]),
                       static_cast<int>(n) + 1,
                       static_cast<int>(order.size()),
                       held,
                       !picked.empty() && !held,
                       ordering.locked,
                       {all.x, all.y + layout.tops[n], all.w, height}};
    const OrderAct act = draw_order_row(ui, row);
    if (act != OrderAct::none) done = {act, n};
  }
  return done;
}

Order after(Ui& ui, const Ordering& ordering, const Order& order, Done done) {
  switch (done.act) {
    case OrderAct::up:
      return make_move(ui, ordering, order, {done.row, done.row - 1});
    case OrderAct::down:
      return make_move(ui, ordering, order, {done.row, done.row + 1});
    case OrderAct::pick:
      return pick(ui, ordering, order, done.row);
    case OrderAct::none:
      break;
  }
  return order;
}

bool same_cards(Order a, Order b) {
  std::ranges::sort(a);
  std::ranges::sort(b);
  return a == b;
}

// While a card is held, its place is taken by the hint: nothing jumps.
bool hint(Ui& ui, const Ordering& ordering) {
  const auto held = ui.state().picked.find(ordering.id);
  if (held == ui.state().picked.end() || held->second.empty()) return false;
  const std::string& text = ui.words().picked_hint;
  const TextBlock& block = wrapped(ui, bold_type(ui), text, column_width(ui));
  const Rect row = place(ui, std::max(k_answer_px, block.height), 16);
  draw_text(ui, bold_type(ui), text, block,
            {.x = row.x, .y = row.y + (row.h - block.height) / 2, .colour = ui.palette().ink});
  record(ui, {.id = joined(ordering.id, "hint"),
              .role = shell::Role::paragraph,
              .name = text,
              .rect = row});
  return true;
}

// Always there, so that nothing jumps when the first card is moved.
void undo(Ui& ui, const Ordering& ordering, Order& order) {
  auto& history = ui.state().undo[ordering.id];
  if (!history.empty() && !same_cards(history.back(), order)) history.clear();
  const Button button{.id = joined(ordering.id, "undo"),
                      .label = ui.words().undo_move,
                      .icon = Icon::undo,
                      .enabled = !history.empty()};
  if (!quiet_button(ui, button) || history.empty()) return;
  start_slides(ui, ordering, order, history.back());
  order = history.back();
  history.pop_back();
}

}  // namespace

OrderResult ordering(Ui& ui, const Ordering& ordering) {
  Order order;
  for (const OrderCard& card : ordering.cards) order.push_back(card.id);
  if (order.empty()) return {};
  const Done done = draw_rows(ui, ordering, order);
  OrderResult result{after(ui, ordering, order, done), false};
  if (!ordering.locked && !hint(ui, ordering)) undo(ui, ordering, result.order);
  result.moved = result.order != order;
  if (done.act != OrderAct::none || result.moved) want_frame(ui);
  return result;
}

}  // namespace rehale::kit
