// Ordering: by the two buttons, by tapping card then place, and back again. Nothing needs dragging
// (WCAG 2.2 2.5.7).
#include <gtest/gtest.h>

#include "tests/web/kit_rig.h"

namespace rehale {
namespace {

using rig::Role;
using Order = std::vector<std::string>;

struct KitOrder : testing::Test {
  Order order{"shake", "open", "out", "press"};
  bool locked = false, still = true;
  void start() {
    rig::open({.width = 390, .height = 844, .reduced_motion = still}, [this](kit::Ui& ui) {
      kit::begin_screen(ui, {.id = "s", .title = "S"});
      kit::Ordering cards{.id = "o", .name = "Put in order", .locked = locked};
      for (const auto& id : order) cards.cards.push_back({.id = id, .label = "Do " + id});
      order = kit::ordering(ui, cards).order;
      kit::end_screen(ui);
    });
  }
  const rig::MirrorNode& button(const std::string& name) { return rig::find(Role::button, name); }
};

TEST_F(KitOrder, move_buttons_move_one_place_and_say_so) {
  start();
  rig::tap(button("Move up: Do open, now 2 of 4"));
  EXPECT_EQ(order, (Order{"open", "shake", "out", "press"}));
  EXPECT_EQ(rig::said(), "Do open is now 1 of 4.");
  rig::press(button("Move down: Do shake, now 2 of 4"));
  EXPECT_EQ(order, (Order{"open", "out", "shake", "press"}));
  EXPECT_EQ(rig::said(), "Do shake is now 3 of 4.");
}

TEST_F(KitOrder, first_and_last_cards_cannot_leave_the_list) {
  start();
  EXPECT_TRUE(button("Move up: Do shake, now 1 of 4").disabled);
  EXPECT_TRUE(button("Move down: Do press, now 4 of 4").disabled);
  rig::press(button("Move up: Do shake, now 1 of 4"));
  rig::tap(button("Move down: Do press, now 4 of 4"));
  EXPECT_EQ(order, (Order{"shake", "open", "out", "press"}));
}

TEST_F(KitOrder, tap_a_card_then_the_place_where_it_goes) {
  start();
  rig::tap(button("Pick up: Do press, now 4 of 4"));
  EXPECT_TRUE(button("Put down: Do press, stays at 4 of 4").current);
  rig::tap(button("Put it here, place 2 of 4: Do open"));
  EXPECT_EQ(order, (Order{"shake", "press", "open", "out"}));
  EXPECT_EQ(rig::said(), "Now tap the place where it goes.|Do press is now 2 of 4.");
  rig::press(button("Pick up: Do shake, now 1 of 4"));
  rig::press(button("Put it here, place 3 of 4: Do open"));
  EXPECT_EQ(order, (Order{"press", "open", "shake", "out"}));
}

TEST_F(KitOrder, a_card_can_be_put_down_where_it_was) {
  start();
  rig::tap(button("Pick up: Do out, now 3 of 4"));
  rig::tap(button("Put down: Do out, stays at 3 of 4"));
  EXPECT_EQ(order, (Order{"shake", "open", "out", "press"}));
  EXPECT_FALSE(button("Pick up: Do out, now 3 of 4").current);
}

TEST_F(KitOrder, undo_takes_back_every_move_one_by_one) {
  start();
  EXPECT_TRUE(button("Undo the last move").disabled);
  rig::press(button("Move down: Do shake, now 1 of 4"));
  rig::press(button("Pick up: Do press, now 4 of 4"));
  rig::press(button("Put it here, place 1 of 4: Do open"));
  EXPECT_EQ(order, (Order{"press", "open", "shake", "out"}));
  rig::tap(button("Undo the last move"));
  EXPECT_EQ(order, (Order{"open", "shake", "out", "press"}));
  rig::press(button("Undo the last move"));
  EXPECT_EQ(order, (Order{"shake", "open", "out", "press"}));
  EXPECT_TRUE(button("Undo the last move").disabled);
}

TEST_F(KitOrder, cards_glide_for_300_ms_then_everything_rests) {
  still = false;
  start();
  rig::pass(500);
  shell::null::press("o/open/up");
  const int frames = rig::settle();
  EXPECT_GE(frames * 16, 300);
  EXPECT_LE(frames * 16, 450);
  EXPECT_EQ(shell::null::frames_wanted(), 0);
}

TEST_F(KitOrder, an_answered_order_is_a_plain_list) {
  locked = true;
  start();
  EXPECT_FALSE(rig::has("o/shake/up"));
  EXPECT_FALSE(rig::has("o/undo"));
  const auto& card = rig::find(Role::list_item, "Do out");
  EXPECT_EQ(card.position, 3);
  EXPECT_EQ(card.set_size, 4);
}

}  // namespace
}  // namespace rehale
