// Buttons and answers: a finger, a mouse and the keyboard do the same; a trembling hand is
// forgiven. Numbers: facts/users.md 2.3 (drift 24 px, 400 ms, act on release) and
// WCAG 2.2 2.5.2, 2.5.8.
#include <gtest/gtest.h>

#include "tests/web/kit_rig.h"

namespace rehale {
namespace {

using rig::Role;

struct Counted {
  int quiet = 0, go = 0, unsure = 0;
  int chosen = -1;
  bool locked = false, ready = true;
};

void draw(kit::Ui& ui, Counted& c) {
  kit::begin_screen(ui, {.id = "s", .title = "S"});
  kit::heading(ui, "h", "Ask", kit::Heading::question);
  c.chosen = kit::one_of(ui,
                         {.id = "one",
                          .name = "One",
                          .options = {{.id = "a", .label = "First"},
                                      {.id = "b", .label = "Second"},
                                      {.id = "c", .label = "Third"}},
                          .locked = c.locked},
                         c.chosen);
  if (kit::quiet_button(ui, {.id = "quiet", .label = "Show me", .name = "Show me: breath"}))
    ++c.quiet;
  const auto act = kit::end_screen(
      ui, {.main = {.id = "go", .label = "Go", .enabled = c.ready, .why_not = "Pick one first."},
           .quiet = {.id = "unsure", .label = "Not sure"}});
  if (act == kit::ActionPress::main) ++c.go;
  if (act == kit::ActionPress::quiet) ++c.unsure;
}

struct KitAnswer : testing::Test {
  Counted c;
  void start(const rig::Setting& setting = {}) {
    rig::open(setting, [this](kit::Ui& ui) { draw(ui, c); });
  }
};

TEST_F(KitAnswer, finger_mouse_and_keyboard_press_the_same_button) {
  start();
  rig::tap(rig::find(Role::button, "Show me: breath"));
  EXPECT_EQ(c.quiet, 1);
  rig::click(rig::find(Role::button, "Show me: breath"));
  EXPECT_EQ(c.quiet, 2);
  rig::press(rig::find(Role::button, "Show me: breath"));
  EXPECT_EQ(c.quiet, 3);
  rig::tap(rig::find(Role::button, "Go"));
  rig::press(rig::find(Role::button, "Not sure"));
  EXPECT_EQ(c.go, 1);
  EXPECT_EQ(c.unsure, 1);
}

TEST_F(KitAnswer, a_choice_by_finger_and_by_mirror_is_the_same_choice) {
  start();
  rig::tap(rig::find(Role::radio, "Second"));
  EXPECT_EQ(c.chosen, 1);
  EXPECT_TRUE(rig::find(Role::radio, "Second").checked);
  rig::press(rig::find(Role::radio, "Third"));
  EXPECT_EQ(c.chosen, 2);
  EXPECT_FALSE(rig::find(Role::radio, "Second").checked);
  rig::press(rig::find(Role::radio, "Third"));
  EXPECT_EQ(c.chosen, 2) << "a chosen radio stays chosen";
}

TEST_F(KitAnswer, it_acts_on_release_not_on_press) {
  start();
  const auto rect = rig::find(Role::button, "Go").rect;
  rig::touch_down(rect.x + 20, rect.y + 20);
  EXPECT_EQ(c.go, 0);
  rig::touch_up();
  EXPECT_EQ(c.go, 1);
}

TEST_F(KitAnswer, sliding_off_calls_the_press_off) {
  start();
  const auto rect = rig::find(Role::button, "Go").rect;
  rig::touch_down(rect.x + rect.w / 2, rect.y + 10);
  rig::touch_move(rect.x + rect.w / 2, rect.y - 40);
  rig::touch_up();
  EXPECT_EQ(c.go, 0);
}

TEST_F(KitAnswer, a_drift_of_24_px_off_the_edge_is_forgiven) {
  start();
  const auto rect = rig::find(Role::button, "Go").rect;
  rig::touch_down(rect.x + rect.w / 2, rect.y + 9);
  rig::touch_move(rect.x + rect.w / 2, rect.y - 14);
  rig::touch_up();
  EXPECT_EQ(c.go, 1);
  rig::pass(500);
  rig::touch_down(rect.x + rect.w / 2, rect.y + 9);
  rig::touch_move(rect.x + rect.w / 2, rect.y - 17);
  rig::touch_up();
  EXPECT_EQ(c.go, 1) << "26 px is not";
}

TEST_F(KitAnswer, a_second_touch_within_400_ms_is_not_meant_but_a_key_is) {
  start();
  const auto go = rig::find(Role::button, "Go");
  rig::tap(go);
  shell::null::pointer_down(go.rect.x + 9, go.rect.y + 9);
  shell::null::pointer_up();
  rig::settle();
  EXPECT_EQ(c.go, 1);
  const auto radio = rig::find(Role::radio, "First").rect;
  shell::null::pointer_down(radio.x + 9, radio.y + 9);
  shell::null::pointer_up();
  rig::settle();
  EXPECT_EQ(c.chosen, -1) << "not on another control either";
  rig::press(go);
  EXPECT_EQ(c.go, 2);
  rig::tap(go);
  EXPECT_EQ(c.go, 3);
}

// Points just within the four edges, so far from them.
std::vector<std::pair<float, float>> within(const shell::Rect& rect, float px) {
  return {{rect.x + px, rect.y + rect.h / 2},
          {rect.x + rect.w - px, rect.y + rect.h / 2},
          {rect.x + rect.w / 2, rect.y + px},
          {rect.x + rect.w / 2, rect.y + rect.h - px}};
}

TEST_F(KitAnswer, what_the_mirror_tells_is_what_can_be_hit) {
  start();
  const auto rect = rig::find(Role::radio, "Second").rect;
  for (const auto& [x, y] : within(rect, 1)) {
    c.chosen = -1;
    rig::pass(500);
    shell::null::pointer_move(x, y);
    shell::null::pointer_down(x, y, shell::Pointer::Kind::mouse);
    shell::null::pointer_up();
    rig::settle();
    EXPECT_EQ(c.chosen, 1) << x << ", " << y;
  }
  for (const auto& [x, y] : within(rect, 9)) {
    c.chosen = -1;
    rig::tap(x, y);
    EXPECT_EQ(c.chosen, 1) << x << ", " << y;
  }
  c.chosen = -1;
  rig::tap(rect.x - 2, rect.y + rect.h / 2);
  rig::tap(rect.x + rect.w / 2, rect.y + rect.h + 2);
  EXPECT_EQ(c.chosen, -1);
}

// A shaking finger at the very edge may mean the neighbour (tests/browser/jitter_test.mjs).
TEST_F(KitAnswer, a_finger_at_the_very_edge_presses_nothing_but_48_px_always_count) {
  start();
  const auto rect = rig::find(Role::radio, "Second").rect;
  for (const auto& [x, y] : within(rect, 5)) {
    rig::tap(x, y);
    EXPECT_EQ(c.chosen, -1) << x << ", " << y;
  }
  EXPECT_GE(rect.h - 16, 48);
}

TEST_F(KitAnswer, an_answered_question_cannot_be_changed) {
  c.locked = true;
  c.chosen = 0;
  start();
  rig::tap(rig::find(Role::radio, "Second"));
  rig::press(rig::find(Role::radio, "Second"));
  EXPECT_EQ(c.chosen, 0);
  EXPECT_TRUE(rig::find(Role::radio, "Second").disabled);
}

TEST_F(KitAnswer, a_main_action_that_is_not_ready_says_why) {
  c.ready = false;
  start();
  EXPECT_TRUE(rig::find(Role::button, "Go").disabled);
  EXPECT_EQ(rig::find(Role::button, "Go").description, "Pick one first.");
  rig::tap(rig::find(Role::button, "Go"));
  EXPECT_EQ(c.go, 0);
  EXPECT_EQ(rig::said(), "Pick one first.");
  EXPECT_EQ(rig::find_id("why-not").name, "Pick one first.");
  c.ready = true;
  shell::redraw();
  rig::settle();
  EXPECT_FALSE(rig::has("why-not"));
  EXPECT_FALSE(rig::find(Role::button, "Go").disabled);
}

TEST(KitChecks, each_press_flips_one_and_marks_are_told_in_words) {
  std::vector<bool> ticked{false, true};
  bool revealed = false;
  rig::open({}, [&](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    ticked =
        kit::several_of(ui,
                        {.id = "all",
                         .name = "All",
                         .options = {{.id = "a",
                                      .label = "Shake",
                                      .mark = revealed ? kit::Mark::going_well : kit::Mark::none},
                                     {.id = "b",
                                      .label = "Blow",
                                      .mark = revealed ? kit::Mark::to_mend : kit::Mark::none,
                                      .note = revealed ? "Blow away from it." : ""}},
                         .locked = revealed},
                        ticked);
    kit::end_screen(ui);
  });
  rig::tap(rig::find(Role::checkbox, "Shake"));
  rig::press(rig::find(Role::checkbox, "Blow"));
  EXPECT_EQ(ticked, (std::vector<bool>{true, false}));
  revealed = true;
  shell::redraw();
  rig::settle();
  EXPECT_EQ(rig::find(Role::checkbox, "Shake").description, "You have this");
  EXPECT_EQ(rig::find(Role::checkbox, "Blow").description, "To do better. Blow away from it.");
}

TEST(KitPictures, a_picture_answers_like_a_radio) {
  int chosen = -1, drawn = 0;
  const kit::DrawPicture draw_one = [&](kit::Ui&, kit::Rect rect) {
    drawn += rect.w >= 96 && rect.h >= 90 ? 1 : 0;
  };
  rig::open({}, [&](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    chosen =
        kit::one_picture_of(ui,
                            {.id = "p",
                             .name = "Which?",
                             .options = {{.id = "u", .label = "Upright", .draw = draw_one},
                                         {.id = "d", .label = "Upside down", .draw = draw_one}}},
                            chosen);
    kit::end_screen(ui);
  });
  EXPECT_GE(drawn, 2);
  rig::tap(rig::find(Role::radio, "Upside down"));
  EXPECT_EQ(chosen, 1);
  rig::press(rig::find(Role::radio, "Upright"));
  EXPECT_EQ(chosen, 0);
  EXPECT_EQ(rig::find(Role::radio, "Upright").parent, "p");
}

}  // namespace
}  // namespace rehale
