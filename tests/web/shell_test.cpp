// The shell without a browser: who gets frames, what a pointer is, what arrives, what the mirror is
// sent. Numbers: toolchain.md 4 and 5 (3 settle frames, 10 px before a touch is a drag), issue 2
// part 6.

#include <gtest/gtest.h>

#include <imgui.h>

#include <cmath>
#include <cstring>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/web/kit_rig.h"
#include "web/shell/host_null.h"
#include "web/shell/mirror_text.h"

namespace rehale::shell {
namespace {

std::vector<Pointer> pointers;

// Dear ImGui draws no frame without a font.
void start() {
  const std::string bytes = take_fonts().regular;
  void* copy = IM_ALLOC(bytes.size());
  std::memcpy(copy, bytes.data(), bytes.size());
  ImGui::GetIO().Fonts->AddFontFromMemoryTTF(copy, static_cast<int>(bytes.size()), 18);
}

bool moves = false;  // another picture in each frame

void frame() {
  pointers.push_back(pointer());
  if (!moves) return;
  const float x = static_cast<float>(pointers.size());
  ImGui::GetForegroundDrawList()->AddRectFilled({x, 0}, {x + 9, 9}, IM_COL32_WHITE);
}

class Shell : public ::testing::Test {
 protected:
  void SetUp() override {
    null::reset();
    const std::string face = rig::font_path("400Regular");
    ASSERT_TRUE(null::load_fonts(face, face)) << "run ci/setup: no fonts";
    run({.start = start, .frame = frame});
    null::settle();
    pointers.clear();
    moves = false;
  }
  void TearDown() override { null::reset(); }
};

Pointer last_with(bool Pointer::*flag) {
  for (const Pointer& seen : pointers) {
    if (seen.*flag) return seen;
  }
  return {};
}

TEST_F(Shell, draws_nothing_when_nobody_asks) {
  EXPECT_EQ(null::frames_wanted(), 0);
  EXPECT_EQ(null::settle(), 0);
}

TEST_F(Shell, draws_as_many_frames_as_the_most_that_was_asked) {
  moves = true;
  redraw(1);
  redraw(4);
  redraw(2);
  EXPECT_EQ(null::settle(), 4);
}

TEST_F(Shell, rests_as_soon_as_a_frame_changes_nothing) {
  redraw(9);  // heard in the first frame; the second finds nothing new
  EXPECT_EQ(null::settle(), 2);
}

TEST_F(Shell, draws_one_frame_at_a_deadline_and_none_before) {
  redraw_at(500);
  null::set_now(499);
  EXPECT_EQ(null::settle(), 0);
  null::set_now(500);
  EXPECT_EQ(null::settle(), 1);
  null::set_now(2000);
  EXPECT_EQ(null::settle(), 0);
}

TEST_F(Shell, keeps_the_earliest_deadline) {
  redraw_at(900);
  redraw_at(300);
  redraw_at(600);
  EXPECT_EQ(null::next_deadline_ms(), 300);
}

TEST_F(Shell, hands_over_a_press_and_its_release_in_two_frames_at_one_place) {
  null::tap(50, 60);
  null::settle();
  const Pointer pressed = last_with(&Pointer::pressed), released = last_with(&Pointer::released);
  EXPECT_TRUE(pressed.down);
  EXPECT_EQ(pressed.x, 50);
  EXPECT_TRUE(released.present);
  EXPECT_EQ(released.x, 50);
  EXPECT_EQ(released.y, 60);
  EXPECT_EQ(released.kind, Pointer::Kind::touch);
}

TEST_F(Shell, leaves_no_hover_behind_a_finger) {
  null::tap(50, 60);
  null::settle();
  EXPECT_FALSE(pointer().present);
}

TEST_F(Shell, keeps_the_mouse_hovering_after_a_click) {
  null::pointer_down(50, 60, Pointer::Kind::mouse);
  null::pointer_up();
  null::settle();
  EXPECT_TRUE(pointer().present);
}

TEST_F(Shell, draws_what_a_release_brought_though_its_own_frame_looks_as_the_one_before) {
  null::pointer_down(50, 60, Pointer::Kind::mouse);
  null::pointer_up();
  null::settle();
  ASSERT_FALSE(pointers.empty());
  EXPECT_TRUE(last_with(&Pointer::released).released);
  EXPECT_FALSE(pointers.back().released);
}

TEST_F(Shell, calls_a_finger_that_goes_further_than_ten_px_a_drag_until_it_is_up) {
  null::pointer_down(50, 60);
  null::settle();
  null::pointer_move(50, 69, Pointer::Kind::touch);
  null::settle();
  EXPECT_FALSE(pointer().dragging);
  null::pointer_move(50, 72, Pointer::Kind::touch);
  null::settle();
  EXPECT_TRUE(pointer().dragging);
  null::pointer_move(50, 60, Pointer::Kind::touch);  // back where it began: still a drag
  pointers.clear();
  null::pointer_up();
  null::settle();
  EXPECT_TRUE(last_with(&Pointer::released).dragging);
  null::set_now(1000);
  null::tap(50, 60);
  pointers.clear();
  null::settle();
  EXPECT_FALSE(last_with(&Pointer::released).dragging);
}

TEST_F(Shell, never_calls_a_mouse_a_drag) {
  null::pointer_down(50, 60, Pointer::Kind::mouse);
  null::pointer_move(50, 160, Pointer::Kind::mouse);
  null::settle();
  EXPECT_TRUE(pointer().down);
  EXPECT_FALSE(pointer().dragging);
}

TEST_F(Shell, releases_a_cancelled_press_nowhere) {
  null::pointer_down(50, 60);
  null::settle();
  pointers.clear();
  null::pointer_cancel();
  null::settle();
  EXPECT_TRUE(last_with(&Pointer::released).released);
  EXPECT_FALSE(last_with(&Pointer::released).present);
}

TEST_F(Shell, gives_actions_once_in_order_and_forgets_those_nobody_takes) {
  null::press("a");
  null::act({MirrorAction::Kind::set_number, "b", 7});
  const auto actions = take_actions();
  ASSERT_EQ(actions.size(), 2U);
  EXPECT_EQ(actions[0].id, "a");
  EXPECT_EQ(actions[1].number, 7);
  EXPECT_TRUE(take_actions().empty());
  null::press("c");
  null::settle();
  EXPECT_TRUE(take_actions().empty());
}

TEST_F(Shell, answers_a_fetch_before_a_later_frame_never_inside_the_call) {
  null::set_file("content/a.json", "{}");
  std::string got;
  fetch_text("content/a.json", [&got](const Result<std::string>& text) { got = *text; });
  EXPECT_EQ(got, "");
  null::settle();
  EXPECT_EQ(got, "{}");
}

TEST_F(Shell, says_which_file_did_not_arrive) {
  Error error;
  fetch_text("content/none.json",
             [&error](const Result<std::string>& text) { error = text.error(); });
  null::settle();
  EXPECT_EQ(error.code, "not-found");
  EXPECT_EQ(error.where, "content/none.json");
}

TEST_F(Shell, sends_the_mirror_only_when_it_differs) {
  MirrorFrame frame{.screen = "s", .title = "t", .language = "en", .ground = "", .nodes = {}};
  publish(frame);
  publish(frame);
  EXPECT_EQ(null::publishes(), 1);
  frame.nodes.push_back({.id = "a", .role = Role::button, .name = "A"});
  publish(frame);
  frame.nodes[0].rect.x = 1;
  publish(frame);
  EXPECT_EQ(null::publishes(), 3);
}

TEST_F(Shell, draws_nothing_after_the_error_panel_and_keeps_its_first_words) {
  show_error_panel("First", "one");
  show_error_panel("Second", "two");
  redraw();
  EXPECT_EQ(null::settle(), 0);
  EXPECT_EQ(null::error_title(), "First");
}

// Read back by an independent JSON reader (nlohmann).
TEST(MirrorText, is_json_that_says_what_the_frame_says) {
  MirrorFrame frame{
      .screen = "q\"1", .title = "Tab\there", .language = "de", .ground = "dark", .nodes = {}};
  frame.nodes.push_back({.id = "pick", .role = Role::radio_group, .name = "Größe \\ \x01"});
  frame.nodes.push_back({.id = "days",
                         .parent = "pick",
                         .role = Role::spin,
                         .name = "Days",
                         .number = 3.5,
                         .min = -2,
                         .max = INFINITY,
                         .rect = {0.5F, 1, 2, 3},
                         .clip = {0, 0, 9, 9}});
  std::string text;
  write_mirror(frame, text);
  const auto json = nlohmann::json::parse(text, nullptr, false);
  ASSERT_FALSE(json.is_discarded()) << text;
  EXPECT_EQ(json["screen"], "q\"1");
  EXPECT_EQ(json["title"], "Tab\there");
  EXPECT_EQ(json["nodes"][0]["name"], "Größe \\ \x01");
  EXPECT_EQ(json["nodes"][0]["role"], "radio_group");
  EXPECT_EQ(json["nodes"][1]["parent"], "pick");
  EXPECT_EQ(json["nodes"][1]["number"], 3.5);
  EXPECT_EQ(json["nodes"][1]["min"], -2);
  EXPECT_EQ(json["nodes"][1]["max"], 1e9);
  EXPECT_EQ(json["nodes"][1]["rect"], (std::vector<double>{0.5, 1, 2, 3}));
  EXPECT_EQ(json["nodes"][1]["clip"], (std::vector<double>{0, 0, 9, 9}));
  EXPECT_FALSE(json["nodes"][1].contains("checked"));
}

}  // namespace
}  // namespace rehale::shell
