// A small app for tests of web/shell alone: one control of each role, a scroll area, a dialog.
// Draws with bare draw lists and needs nothing of web/kit. Never part of the product.

#include <imgui.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "web/shell/app.h"
#include "web/shell/check.h"
#include "web/shell/host.h"

namespace {

using namespace rehale;
using shell::MirrorAction;
using shell::MirrorNode;
using shell::Rect;
using shell::Role;

struct Demo {
  std::string screen = "demo";
  int count = 0, picked = -1, drawn = 0;
  bool ticked = false, on = false, dialog = false, refuse = false, reversed = false,
       animate = false;
  double number = 3;
  float scroll = 0;
  std::string pressed_id, focus_row, text = "none";
  double due_ms = 0;
  int timer_fired = 0;
  std::vector<MirrorNode> nodes;
  std::vector<MirrorAction> actions;
  shell::Pointer pointer;
};

Demo demo;
constexpr float k_left = 20, k_width = 300, k_row = 48;
const Rect k_area{340, 80, 220, 200};

bool holds(const Rect& r, float x, float y) {
  return x >= r.x && x < r.x + r.w && y >= r.y && y < r.y + r.h;
}

bool hit(const MirrorNode& node) {
  const auto& p = demo.pointer;
  const bool inside =
      holds(node.rect, p.x, p.y) && (node.clip.w == 0 || holds(node.clip, p.x, p.y));
  const bool blocked = demo.dialog && node.parent != "dialog";
  if (p.pressed && inside && !blocked) demo.pressed_id = node.id;
  if (p.dragging && demo.pressed_id == node.id) demo.pressed_id.clear();
  const bool acted = p.released && inside && demo.pressed_id == node.id;
  if (acted) demo.pressed_id.clear();
  return acted;
}

bool told(const std::string& id, MirrorAction::Kind kind, double* number = nullptr) {
  for (const MirrorAction& action : demo.actions) {
    if (action.id != id || action.kind != kind) continue;
    if (number != nullptr) *number = action.number;
    return true;
  }
  return false;
}

void draw_box(const MirrorNode& node, ImU32 colour) {
  ImDrawList* list = ImGui::GetBackgroundDrawList();
  const Rect& r = node.rect;
  if (node.clip.w > 0) {
    list->PushClipRect({node.clip.x, node.clip.y},
                       {node.clip.x + node.clip.w, node.clip.y + node.clip.h});
  }
  list->AddRectFilled({r.x, r.y}, {r.x + r.w, r.y + r.h}, colour);
  list->AddText({r.x + 8, r.y + 12}, IM_COL32(20, 30, 40, 255), node.name.c_str());
  if (node.clip.w > 0) list->PopClipRect();
}

// Draws and records; true when activated by pointer or mirror.
bool control(MirrorNode node) {
  const bool hovered = holds(node.rect, demo.pointer.x, demo.pointer.y);
  draw_box(node, hovered ? IM_COL32(240, 200, 120, 255) : IM_COL32(200, 220, 230, 255));
  const bool by_pointer = hit(node);
  const bool by_mirror = told(node.id, MirrorAction::Kind::press);
  demo.nodes.push_back(std::move(node));
  return by_pointer || by_mirror;
}

Rect row(int n) { return {k_left, 80 + static_cast<float>(n) * (k_row + 8), k_width, k_row}; }

MirrorNode node_of(const char* id, Role role, const std::string& name, Rect rect) {
  MirrorNode node;
  node.id = id;
  node.role = role;
  node.name = name;
  node.rect = rect;
  return node;
}

void words(const char* id, Role role, const std::string& name, Rect rect, int level = 0) {
  MirrorNode node = node_of(id, role, name, rect);
  node.level = level;
  draw_box(node, IM_COL32(251, 247, 239, 255));
  demo.nodes.push_back(std::move(node));
}

void draw_buttons() {
  if (control(node_of("count", Role::button, "Count", row(0)))) ++demo.count;
  MirrorNode toggle = node_of("toggle", Role::toggle, "Louder", row(1));
  toggle.checked = demo.on;
  toggle.description = "Makes the demo louder.";
  if (control(toggle)) demo.on = !demo.on;
  if (control(node_of("next", Role::button, "Next screen", row(2)))) {
    demo.screen = demo.screen == "demo" ? "other" : "demo";
  }
  if (control(node_of("open", Role::button, "Open dialog", row(3)))) demo.dialog = true;
  if (control(node_of("say", Role::button, "Say it", row(4)))) shell::announce("Saved.");
  if (control(node_of("turn", Role::button, "Turn the rows", row(5))))
    demo.reversed = !demo.reversed;
  if (control(node_of("timer", Role::button, "In half a second", row(6)))) {
    demo.due_ms = shell::now_ms() + 500;
    shell::redraw_at(demo.due_ms);
  }
  if (demo.due_ms > 0 && shell::now_ms() >= demo.due_ms) {
    demo.due_ms = 0;
    ++demo.timer_fired;
  }
}

void draw_answers() {
  MirrorNode group = node_of("pick", Role::radio_group, "Pick one", {k_left, 480, k_width, 160});
  demo.nodes.push_back(group);
  const char* names[] = {"Red", "Green", "Locked"};
  for (int i = 0; i < 3; ++i) {
    MirrorNode radio = node_of(("pick/" + std::to_string(i)).c_str(), Role::radio, names[i],
                               {k_left, 480 + static_cast<float>(i) * 54, k_width, k_row});
    radio.parent = "pick";
    radio.checked = demo.picked == i;
    if (control(radio) && i != 2) demo.picked = i;  // the third always refuses
  }
  MirrorNode box = node_of("tick", Role::checkbox, "I am sure", {k_left, 650, k_width, k_row});
  box.checked = demo.ticked;
  if (control(box)) demo.ticked = !demo.ticked;

  MirrorNode spin = node_of("days", Role::spin, "Days left", {340, 300, 120, k_row});
  spin.number = demo.number;
  spin.min = 0;
  spin.max = 60;
  spin.value = std::to_string(static_cast<int>(demo.number)) + " days";
  control(spin);
  double typed = 0;
  if (told("days", MirrorAction::Kind::set_number, &typed))
    demo.number = std::clamp(typed, 0.0, 60.0);
}

void scroll_by_hand(float content) {
  const auto& p = demo.pointer;
  if (holds(k_area, p.x, p.y)) {
    if (p.dragging) demo.scroll -= p.moved_y;
    demo.scroll -= p.wheel_px;
  }
  double px = 0;
  if (told("", MirrorAction::Kind::scroll, &px)) demo.scroll += static_cast<float>(px);
  demo.scroll = std::clamp(demo.scroll, 0.0F, content - k_area.h);
}

void draw_rows() {
  constexpr int k_rows = 12;
  scroll_by_hand(k_rows * 56);
  demo.nodes.push_back(node_of("rows", Role::list, "Rows", k_area));
  for (int i = 0; i < k_rows; ++i) {
    const int which = demo.reversed ? k_rows - 1 - i : i;
    const std::string id = "row/" + std::to_string(which);
    const Rect rect{k_area.x, k_area.y + static_cast<float>(i) * 56 - demo.scroll, k_area.w, k_row};
    MirrorNode item = node_of((id + "/item").c_str(), Role::list_item, "", rect);
    item.parent = "rows";
    item.position = i + 1;
    item.set_size = k_rows;
    item.clip = k_area;
    demo.nodes.push_back(item);
    MirrorNode button = node_of(id.c_str(), Role::button, "Row " + std::to_string(which), rect);
    button.parent = item.id;
    button.clip = k_area;
    if (control(button)) demo.text = button.name;
    if (told(id, MirrorAction::Kind::focus) &&
        (rect.y < k_area.y || rect.y + rect.h > k_area.y + k_area.h)) {
      demo.scroll += rect.y - k_area.y;
      shell::redraw();
    }
  }
}

void draw_dangers() {
  const Rect at{340, 360, 220, 40};
  auto below = [&at](int n) { return Rect{at.x, at.y + static_cast<float>(n) * 48, at.w, at.h}; };
  if (control(node_of("trap", Role::button, "Trap", below(0)))) __builtin_trap();
  if (control(node_of("check", Role::button, "Break a check", below(1)))) {
    CHECK(demo.count < 0, "the demo breaks on purpose");
  }
  if (control(node_of("fill", Role::button, "Fill memory", below(2)))) {
    static std::vector<std::string> hoard;
    for (;;) hoard.emplace_back(1 << 20, 'x');
  }
  if (control(node_of("panel", Role::button, "Bad content", below(3)))) {
    shell::show_error_panel("The questions could not be read.",
                            "content/library.json: /schema: 1 is known");
  }
  if (control(node_of("fetch", Role::button, "Fetch", below(4)))) {
    const std::string path = shell::launch_option("path");
    shell::fetch_text(path, [](const Result<std::string>& text) {
      demo.text = text ? "got " + *text
                       : text.error().code + "|" + text.error().where + "|" + text.error().detail;
      shell::redraw();
    });
  }
  if (control(node_of("animate", Role::button, "Animate", below(5)))) demo.animate = !demo.animate;
  if (demo.animate) shell::redraw(1, "animation");
}

void draw_dialog() {
  if (told("dialog", MirrorAction::Kind::dismiss)) demo.dialog = false;
  if (!demo.dialog) return;
  words("dialog", Role::dialog, "A question", {100, 100, 300, 200});
  MirrorNode title = node_of("dialog/title", Role::heading, "Are you sure?", {110, 110, 280, 40});
  title.parent = "dialog";
  title.level = 2;
  demo.nodes.push_back(title);
  MirrorNode close = node_of("close", Role::button, "Close", {110, 200, 200, k_row});
  close.parent = "dialog";
  if (control(close)) demo.dialog = false;
}

void draw_state() {
  char line[400];
  const auto wish = shell::preferences();
  std::snprintf(
      line, sizeof line,
      "count %d on %d picked %d ticked %d days %g timer %d seed %s dark %d calm %d text %s",
      demo.count, demo.on, demo.picked, demo.ticked, demo.number, demo.timer_fired,
      shell::launch_option("seed").c_str(), wish.dark, wish.reduced_motion, demo.text.c_str());
  words("state", Role::paragraph, line, {k_left, 740, 900, 30});
}

// A pattern of one device pixel wide lines, for the test of crispness.
void draw_lines() {
  const float px = 1 / shell::viewport().density;
  ImDrawList* list = ImGui::GetBackgroundDrawList();
  list->AddRectFilled({600, 100}, {700, 200}, IM_COL32(255, 255, 255, 255));
  for (int i = 0; i < 20; ++i) {
    const float x = 600 + static_cast<float>(i) * 2 * px;
    list->AddRectFilled({x, 100}, {x + px, 200}, IM_COL32(0, 0, 0, 255));
  }
}

std::vector<MirrorNode> drawn_nodes() { return std::move(demo.nodes); }

void frame() {
  demo.nodes.clear();
  demo.actions = shell::take_actions();
  demo.pointer = shell::pointer();
  const auto size = shell::viewport();
  const bool dark = shell::preferences().dark;
  ImGui::GetBackgroundDrawList()->AddRectFilled(
      {0, 0}, {size.width_px, size.height_px},
      dark ? IM_COL32(23, 20, 24, 255) : IM_COL32(251, 247, 239, 255));
  words("title", Role::heading, demo.screen == "demo" ? "Demo" : "Other", {k_left, 20, k_width, 40},
        1);
  draw_buttons();
  draw_answers();
  draw_rows();
  draw_dangers();
  draw_state();
  draw_lines();
  draw_dialog();
  if (demo.pointer.released) demo.pressed_id.clear();
  shell::publish({.screen = demo.screen,
                  .title = "Demo",
                  .language = "en",
                  .ground = dark ? "dark" : "light",
                  .nodes = drawn_nodes()});
}

void start() {
  const shell::Fonts fonts = shell::take_fonts();
  void* copy = IM_ALLOC(fonts.regular.size());
  std::copy(fonts.regular.begin(), fonts.regular.end(), static_cast<char*>(copy));
  ImGui::GetIO().Fonts->AddFontFromMemoryTTF(copy, static_cast<int>(fonts.regular.size()), 18);
}

std::string run_log() { return R"({"demo":"log"})"; }
std::string content_id() { return "demo-content"; }

}  // namespace

int main() {
  shell::run({.start = start, .frame = frame, .export_run = run_log, .content_id = content_id});
  return 0;
}
