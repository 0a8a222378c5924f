#include "tests/web/kit_rig.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <limits>
#include <memory>
#include <utility>

namespace rehale::rig {
namespace {

namespace null = shell::null;

std::unique_ptr<kit::Ui> g_ui;
std::function<void(kit::Ui&)> g_draw;
double g_now = 0;

void start() {
  const shell::Fonts fonts = shell::take_fonts();
  ASSERT_TRUE(g_ui->load_fonts(fonts.regular, fonts.bold));
}

void frame() {
  g_ui->begin_frame();
  g_draw(*g_ui);
  g_ui->end_frame();
}

void tick(double ms) {
  g_now += ms;
  null::set_now(g_now);
}

const MirrorNode& no_node() {
  static const MirrorNode none;
  return none;
}

}  // namespace

std::string font_path(const std::string& weight) {
  const char* folder = std::getenv("REHALE_FONTS");
  const std::string root = folder != nullptr ? folder
                                             : REHALE_SOURCE_DIR
                               "/ci/node_modules/@expo-google-fonts/atkinson-hyperlegible-next";
  return root + "/" + weight + "/AtkinsonHyperlegibleNext_" + weight + ".ttf";
}

void open(const Setting& setting, std::function<void(kit::Ui&)> draw) {
  g_ui = nullptr;
  null::reset();
  g_ui = std::make_unique<kit::Ui>();
  g_draw = std::move(draw);
  g_now = 0;
  tick(10'000);
  ASSERT_TRUE(null::load_fonts(font_path("400Regular"), font_path("700Bold")))
      << "run ci/setup: no fonts";
  null::set_viewport({setting.width, setting.height, 1});
  null::set_preferences({.dark = setting.dark, .reduced_motion = setting.reduced_motion});
  g_ui->set_look({.text_scale = setting.scale});
  shell::run({start, frame, nullptr, nullptr});
  null::frame();
  settle();
  said();
}

kit::Ui& ui() { return *g_ui; }

int settle(int most) {
  int drawn = 0;
  while (drawn < most && null::frames_wanted() > 0) {
    tick(16);
    null::frame();
    ++drawn;
  }
  return drawn;
}

int pass(double ms) {
  const double end = g_now + ms;
  int drawn = 0;
  const auto draw = [&drawn] {
    if (null::frames_wanted() == 0) return;
    null::frame();
    ++drawn;
  };
  while (g_now < end && (null::frames_wanted() > 0 || null::next_deadline_ms() <= end)) {
    tick(std::min(16.0, end - g_now));
    draw();
  }
  tick(end - g_now);
  draw();
  return drawn;
}

double now() { return g_now; }

const MirrorNode& find(Role role, std::string_view name) {
  const MirrorNode* node = null::find(role, name);
  EXPECT_NE(node, nullptr) << "no such thing: " << name;
  return node == nullptr ? no_node() : *node;
}

const MirrorNode& find_id(std::string_view id) {
  const MirrorNode* node = null::find_id(id);
  EXPECT_NE(node, nullptr) << "no such id: " << id;
  return node == nullptr ? no_node() : *node;
}

bool has(std::string_view id) { return null::find_id(id) != nullptr; }

void tap(float x, float y) {
  pass(500);
  null::pointer_down(x, y);
  null::pointer_up();
  settle();
}

void tap(const MirrorNode& node) {
  tap(node.rect.x + node.rect.w / 2, node.rect.y + node.rect.h / 2);
}

void click(const MirrorNode& node) {
  const float x = node.rect.x + node.rect.w / 2, y = node.rect.y + node.rect.h / 2;
  null::pointer_down(x, y, shell::Pointer::Kind::mouse);
  null::pointer_up();
  settle();
}

void press(const MirrorNode& node) {
  null::press(std::string(node.id));
  settle();
}

void touch_down(float x, float y) {
  null::pointer_down(x, y);
  settle();
}

void touch_move(float x, float y) {
  null::pointer_move(x, y, shell::Pointer::Kind::touch);
  tick(16);
  null::frame();
  null::frame();
}

void touch_up() {
  null::pointer_up();
  settle();
}

std::string said() {
  std::string all;
  for (const std::string& text : null::take_announcements()) all += (all.empty() ? "" : "|") + text;
  return all;
}

bool is_answer(const MirrorNode& node) {
  return node.role == Role::radio || node.role == Role::checkbox;
}

bool is_control(const MirrorNode& node) {
  switch (node.role) {
    case Role::button:
    case Role::toggle:
    case Role::disclosure:
    case Role::radio:
    case Role::checkbox:
    case Role::spin:
    case Role::link:
      return true;
    default:
      return false;
  }
}

}  // namespace rehale::rig
