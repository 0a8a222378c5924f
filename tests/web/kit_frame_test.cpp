// The screen's frame: top bar, scrolling, focus, dialogs, look. Numbers: facts/users.md 2.3.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/web/kit_rig.h"

namespace rehale {
namespace {

using Kind = shell::MirrorAction::Kind;
using rig::Role;

struct KitFrame : testing::Test {
  int rows = 12, chosen = -1;
  std::string visit = "one";
  bool dialog = false, back = false, help = false;
  void start(rig::Setting setting = {}) {
    rig::open(setting, [this](kit::Ui& ui) { draw(ui); });
  }
  void draw(kit::Ui& ui) {
    const auto top = kit::begin_screen(ui, {.id = "s",
                                            .visit = visit,
                                            .title = "Title",
                                            .back = true,
                                            .progress = {2, 6, "Question 2, up to 6"}});
    back = back || top == kit::TopPress::back;
    help = help || top == kit::TopPress::help;
    kit::picture(ui, {.id = "picture", .alternative = "A face in profile.", .draw = nullptr});
    kit::heading(ui, "ask", "What do you do?", kit::Heading::question);
    kit::Choices choices{.id = "c", .name = "What?"};
    for (int n = 1; n <= rows; ++n)
      choices.options.push_back({.id = std::to_string(n), .label = "Answer " + std::to_string(n)});
    chosen = kit::one_of(ui, choices, chosen);
    kit::end_screen(ui, {.main = {.id = "go", .label = "Go"}});
    if (!dialog) return;
    if (kit::begin_dialog(ui, {.id = "d", .title = "Leave?"})) dialog = false;
    kit::quiet_button(ui, {.id = "stay", .label = "Stay"});
    kit::end_dialog(ui);
  }
  float y_of(const std::string& name) { return rig::find(Role::radio, name).rect.y; }
};

TEST_F(KitFrame, top_bar_is_told_and_pressed) {
  start();
  rig::tap(rig::find(Role::button, "Back"));
  rig::press(rig::find(Role::button, "Help and about"));
  EXPECT_TRUE(back);
  EXPECT_TRUE(help);
  const auto& steps = rig::find(Role::progress, "Question 2, up to 6");
  EXPECT_EQ(steps.number, 2);
  EXPECT_EQ(steps.max, 6);
}

TEST_F(KitFrame, the_picture_is_read_after_the_question) {
  start();
  const auto& nodes = shell::null::mirror().nodes;
  const auto ask = std::ranges::find(nodes, "ask", &rig::MirrorNode::id);
  ASSERT_NE(ask, nodes.end());
  EXPECT_EQ((ask + 1)->id, "picture");
  EXPECT_EQ((ask + 1)->role, Role::image);
}

TEST_F(KitFrame, a_finger_scrolls_and_presses_nothing) {
  start();
  const float before = y_of("Answer 3");
  const float y = y_of("Answer 2") + 30;
  rig::touch_down(100, y);
  for (int n = 1; n <= 10; ++n) rig::touch_move(100, y - 12 * static_cast<float>(n));
  rig::touch_up();
  EXPECT_LT(y_of("Answer 3"), before - 60);
  EXPECT_EQ(chosen, -1);
}

TEST_F(KitFrame, a_flick_glides_on_and_rests_but_not_with_reduced_motion) {
  for (const bool still : {false, true}) {
    start({.reduced_motion = still});
    rig::touch_down(100, 400);
    for (int n = 1; n <= 8; ++n) rig::touch_move(100, 400 - 20 * static_cast<float>(n));
    const float held = y_of("Answer 1");
    rig::touch_up();
    EXPECT_EQ(shell::null::frames_wanted(), 0);
    if (still) {
      EXPECT_NEAR(y_of("Answer 1"), held, 1);
    } else {
      EXPECT_LT(y_of("Answer 1"), held - 20);
    }
  }
}

TEST_F(KitFrame, wheel_and_keys_scroll_and_the_ends_hold) {
  start();
  const float top = y_of("Answer 1");
  shell::null::pointer_move(100, 300);
  shell::null::wheel(-1);
  rig::settle();
  EXPECT_NEAR(y_of("Answer 1"), top - 100, 1);
  shell::null::act({Kind::scroll, "", 1e6});
  rig::settle();
  const auto& last = rig::find(Role::radio, "Answer 12");
  EXPECT_LE(last.rect.y + last.rect.h, last.clip.y + last.clip.h);
  shell::null::act({Kind::scroll, "", -1e6});
  rig::settle();
  EXPECT_NEAR(y_of("Answer 1"), top, 1);
}

TEST_F(KitFrame, keyboard_focus_brings_the_answer_into_view) {
  start();
  const auto& hidden = rig::find(Role::radio, "Answer 11");
  EXPECT_GT(hidden.rect.y, hidden.clip.y + hidden.clip.h);
  shell::null::act({Kind::focus, hidden.id});
  rig::settle();
  const auto& shown = rig::find(Role::radio, "Answer 11");
  EXPECT_GE(shown.rect.y, shown.clip.y);
  EXPECT_LE(shown.rect.y + shown.rect.h, shown.clip.y + shown.clip.h);
}

TEST_F(KitFrame, what_is_scrolled_out_cannot_be_hit) {
  start();
  constexpr float k_unsure_px = 8;  // widget.cpp: so near to an edge a finger presses nothing
  const auto go = rig::find(Role::button, "Go").rect;
  int under = 0;
  for (int n = 1; n <= 12; ++n) {
    const auto row = rig::find(Role::radio, "Answer " + std::to_string(n)).rect;
    const float top = std::max(row.y, go.y), end = std::min(row.y + row.h, go.y + go.h);
    if (end - top < 2 * k_unsure_px) continue;
    ++under;
    rig::tap(row.x + row.w / 2, (top + end) / 2);
    EXPECT_EQ(chosen, -1);
  }
  EXPECT_GT(under, 0);
}

TEST_F(KitFrame, a_new_visit_starts_at_the_top_and_focuses_the_question) {
  start();
  shell::null::act({Kind::scroll, "", 400});
  rig::settle();
  visit = "two";
  shell::redraw();
  rig::settle();
  EXPECT_EQ(shell::focused_id(), "ask");
  const auto& first = rig::find_id("picture");
  EXPECT_GE(first.rect.y, first.clip.y);
}

TEST_F(KitFrame, a_dialog_makes_the_rest_inert_and_gives_the_focus_back) {
  rows = 2;
  start();
  shell::null::act({Kind::focus, "go"});
  shell::move_focus("go");
  rig::settle();
  shell::null::frame();
  dialog = true;
  shell::redraw();
  rig::settle();
  EXPECT_EQ(rig::find(Role::button, "Stay").parent, "d");
  EXPECT_EQ(rig::find_id("d").role, Role::dialog);
  const auto back_rect = rig::find(Role::button, "Back").rect;
  rig::tap(back_rect.x + 5, back_rect.y + 20);
  EXPECT_FALSE(back);
  shell::null::act({Kind::dismiss, "d"});
  rig::settle();
  EXPECT_FALSE(dialog);
  EXPECT_FALSE(rig::has("d"));
  EXPECT_EQ(shell::focused_id(), "go");
  rig::tap(back_rect.x + 5, back_rect.y + 20);
  EXPECT_TRUE(back);
}

TEST_F(KitFrame, below_a_dialog_nothing_scrolls) {
  dialog = true;
  start();
  const float top = y_of("Answer 1");
  shell::null::pointer_move(100, 300);
  shell::null::wheel(-1);
  shell::null::act({Kind::scroll, "", 300});
  rig::settle();
  EXPECT_EQ(y_of("Answer 1"), top);
}

TEST_F(KitFrame, the_look_button_changes_ground_size_and_contrast) {
  start();
  rig::tap(rig::find(Role::button, "Settings"));
  rig::tap(rig::find(Role::radio, "Dark"));
  EXPECT_EQ(rig::ui().look().ground, kit::Look::Ground::dark);
  EXPECT_EQ(shell::null::mirror().ground, "dark");
  rig::press(rig::find(Role::button, "More: Size of the words"));
  EXPECT_FLOAT_EQ(rig::ui().text_scale(), 1.25F);
  EXPECT_EQ(rig::find_id("look/size").value, "125 percent");
  rig::press(rig::find(Role::checkbox, "Stronger contrast"));
  EXPECT_EQ(rig::ui().scheme(), kit::Scheme::dark_contrast);
  rig::press(rig::find(Role::button, "Close"));
  EXPECT_FALSE(rig::has("look"));
}

TEST_F(KitFrame, the_look_button_offers_languages_and_says_which_is_shown) {
  start();
  rig::tap(rig::find(Role::button, "Settings"));
  EXPECT_FALSE(rig::has("look/language"));  // one language is no choice
  rig::ui().set_languages({{"en", "English"}, {"es", "Español"}}, "en");
  shell::redraw(1);
  rig::settle();
  EXPECT_EQ(shell::null::mirror().language, "en");
  rig::press(rig::find(Role::radio, "Español"));
  EXPECT_EQ(rig::ui().take_asked_language(), "es");
  EXPECT_EQ(rig::ui().take_asked_language(), "");
  EXPECT_EQ(shell::null::mirror().language, "en");  // until the words are there
  rig::ui().set_languages({{"en", "English"}, {"es", "Español"}}, "es");
  shell::redraw(1);
  rig::settle();
  EXPECT_EQ(shell::null::mirror().language, "es");
}

TEST_F(KitFrame, wide_screens_put_the_picture_left_and_the_words_right) {
  rows = 3;
  start({.width = 1920, .height = 1080});
  const auto& picture = rig::find_id("picture").rect;
  const auto& ask = rig::find_id("ask").rect;
  EXPECT_GE(ask.x, picture.x + picture.w);
  start({.width = 360, .height = 640});
  EXPECT_GE(rig::find_id("ask").rect.y,
            rig::find_id("picture").rect.y + rig::find_id("picture").rect.h);
}

TEST_F(KitFrame, the_picture_shrinks_before_the_words_are_hidden) {
  rows = 1;
  start();
  const float roomy = rig::find_id("picture").rect.h;
  rows = 3;
  start();
  const float shrunk = rig::find_id("picture").rect.h;
  EXPECT_LT(shrunk, roomy);
  const auto& last = rig::find(Role::radio, "Answer 3");
  EXPECT_LE(last.rect.y + last.rect.h, last.clip.y + last.clip.h + 1);
}

}  // namespace
}  // namespace rehale
