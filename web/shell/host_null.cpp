// The shell's seam without a browser: a clock that stands still until told, files from a map or a
// folder, a mirror that is kept. For native tests only.

#include "web/shell/host_null.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <optional>

#include "web/shell/host_state.h"

namespace rehale::shell {
namespace {

constexpr double k_tap_gap_ms = 400;

struct Fake {
  double now_ms = 0, last_tap_ms = -k_tap_gap_ms;
  std::map<std::string, std::string, std::less<>> files;
  std::map<std::string, std::string, std::less<>> replies, asked;
  std::string file_root;
  int today = 0;
  int publishes = 0, reloads = 0;
  double random = 4;
  std::string wanted_focus;
  std::vector<std::string> announcements;
  std::string error_title, error_detail;
  float x = 0, y = 0;
  Pointer::Kind kind = Pointer::Kind::mouse;
  ImTextureID next_texture = 1;
};

Fake& fake() {
  static Fake the_fake;
  return the_fake;
}

std::optional<std::string> read_file(const std::string& path) {
  std::FILE* file = std::fopen(path.c_str(), "rb");
  if (file == nullptr) return std::nullopt;
  std::string text;
  char part[4096];
  for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, file)) > 0;) text.append(part, n);
  std::fclose(file);
  return text;
}

void take_wanted_focus() {
  Fake& f = fake();
  if (f.wanted_focus.empty() || null::find_id(f.wanted_focus) == nullptr) return;
  focus_changed(std::exchange(f.wanted_focus, {}), true);
}

}  // namespace

namespace platform {

double now_ms() { return fake().now_ms; }
void ask_frame(const char* /*cause*/) {}
void ask_wake(double /*at_ms*/) {}
void show_mirror(const MirrorFrame& /*frame*/) { ++fake().publishes; }
void focus(std::string_view id) { fake().wanted_focus = id; }
void announce(std::string_view text, bool /*urgent*/) { fake().announcements.emplace_back(text); }

void fetch(int ticket, std::string_view path) {
  const auto known = fake().files.find(path);
  if (known != fake().files.end()) return fetch_arrived(ticket, known->second);
  if (!fake().file_root.empty()) {
    if (auto text = read_file(fake().file_root + "/" + std::string(path))) {
      return fetch_arrived(ticket, std::move(*text));
    }
  }
  fetch_arrived(ticket, fail("not-found", std::string(path), "there is no such file"));
}

void ask(int ticket, std::string_view name, std::string_view words) {
  fake().asked[std::string(name)] = words;
  const auto known = fake().replies.find(name);
  if (known != fake().replies.end()) return fetch_arrived(ticket, known->second);
  fetch_arrived(ticket, fail("refused", std::string(name), "nobody answers this here"));
}

int today() { return fake().today; }

void stop(std::string_view title, std::string_view detail) {
  fake().error_title = title;
  fake().error_detail = detail;
}

void no_memory() { std::abort(); }
void reload() { ++fake().reloads; }
double random_whole() { return fake().random; }

void draw(ImDrawData* data) {
  for (ImTextureData* texture : *data->Textures) {
    if (texture->Status == ImTextureStatus_WantCreate) texture->SetTexID(fake().next_texture++);
    if (texture->Status == ImTextureStatus_WantDestroy && texture->UnusedFrames > 0) {
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    } else if (texture->Status != ImTextureStatus_WantDestroy) {
      texture->SetStatus(ImTextureStatus_OK);
    }
  }
}

}  // namespace platform

namespace null {

void reset() {
  if (ImGui::GetCurrentContext() != nullptr) ImGui::DestroyContext();
  state() = State();
  fake() = Fake();
  open_imgui();
}

void set_now(double now_ms) { fake().now_ms = now_ms; }

void set_viewport(Viewport viewport) {
  state().viewport = viewport;
  redraw(3, "resize");
}

void set_preferences(const Preferences& preferences) {
  state().preferences = preferences;
  redraw(3, "preferences");
}

void set_voice(const Voice& voice) {
  state().voice = voice;
  redraw(3, "voice");
}

void set_option(std::string_view name, std::string_view value) {
  state().options[std::string(name)] = value;
}

void set_random(double whole) { fake().random = whole; }

void set_file(std::string_view path, std::string_view text) {
  fake().files[std::string(path)] = text;
}

void set_today(int day) { fake().today = day; }

void set_reply(std::string_view name, std::string_view reply) {
  fake().replies[std::string(name)] = reply;
}

void forget_reply(std::string_view name) { fake().replies.erase(std::string(name)); }

std::string asked(std::string_view name) {
  const auto found = fake().asked.find(name);
  return found == fake().asked.end() ? std::string() : found->second;
}

bool was_asked(std::string_view name) { return fake().asked.contains(name); }

void set_file_root(std::string_view folder) { fake().file_root = folder; }

bool load_fonts(std::string_view regular_path, std::string_view bold_path) {
  auto regular = read_file(std::string(regular_path)), bold = read_file(std::string(bold_path));
  if (!regular || !bold) return false;
  state().fonts = {std::move(*regular), std::move(*bold)};
  return true;
}

void pointer_move(float x, float y, Pointer::Kind kind) {
  fake().x = x;
  fake().y = y;
  fake().kind = kind;
  push_pointer(PointerEvent::move, kind, x, y);
}

void pointer_down(float x, float y, Pointer::Kind kind) {
  pointer_move(x, y, kind);
  push_pointer(PointerEvent::down, kind, x, y);
}

void pointer_up() { push_pointer(PointerEvent::up, fake().kind, fake().x, fake().y); }
void pointer_cancel() { push_pointer(PointerEvent::cancel, fake().kind, fake().x, fake().y); }

void tap(float x, float y) {
  // The kit does not take two touches within 400 ms for two meant ones: a person is slower.
  fake().now_ms = std::max(fake().now_ms, fake().last_tap_ms + k_tap_gap_ms);
  fake().last_tap_ms = fake().now_ms;
  pointer_down(x, y);
  pointer_up();
}

void wheel(float notches) { push_wheel(notches); }
void act(MirrorAction action) { push_action(std::move(action)); }
void press(std::string_view id) { act({MirrorAction::Kind::press, std::string(id)}); }

void frame() {
  if (!state().started) start_app();
  if (fake().now_ms >= state().deadline_ms) wake_by_timer();
  draw_frame();
  take_wanted_focus();
}

int settle(int most) {
  int drawn = 0;
  while (drawn < most && (!state().started || frames_wanted() > 0)) {
    frame();
    ++drawn;
  }
  return drawn;
}

int frames_wanted() {
  if (state().stopped) return 0;
  const bool due = fake().now_ms >= state().deadline_ms;
  return state().frames_left > 0 ? state().frames_left : due ? 1 : 0;
}

double next_deadline_ms() { return state().deadline_ms; }

const MirrorFrame& mirror() { return state().shown; }
int publishes() { return fake().publishes; }

const MirrorNode* find(Role role, std::string_view name) {
  for (const MirrorNode& node : state().shown.nodes) {
    if (node.role == role && node.name == name) return &node;
  }
  return nullptr;
}

const MirrorNode* find_id(std::string_view id) {
  for (const MirrorNode& node : state().shown.nodes) {
    if (node.id == id) return &node;
  }
  return nullptr;
}

std::vector<std::string> take_announcements() { return std::exchange(fake().announcements, {}); }
int reloads() { return fake().reloads; }
std::string error_title() { return fake().error_title; }
std::string error_detail() { return fake().error_detail; }

}  // namespace null
}  // namespace rehale::shell
