#include "web/kit/ui.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/kit/settings_dialog.h"
#include "web/kit/widget.h"
#include "web/shell/check.h"

namespace rehale::kit {
namespace {

using Kind = shell::MirrorAction::Kind;

Scheme scheme_of(const State& s) {
  const bool dark = s.look.ground == Look::Ground::system ? s.preferences.dark
                                                          : s.look.ground == Look::Ground::dark;
  if (s.preferences.more_contrast) return dark ? Scheme::dark_contrast : Scheme::light_contrast;
  return dark ? Scheme::dark : Scheme::light;
}

bool holds(Wish wish, bool system) { return wish == Wish::system ? system : wish == Wish::yes; }

// What the person chose goes before what the system asks for.
shell::Preferences preferences_of(const Look& look) {
  shell::Preferences p = shell::preferences();
  p.more_contrast = holds(look.more_contrast, p.more_contrast || p.forced_colors);
  p.reduced_motion = holds(look.still, p.reduced_motion);
  return p;
}

// Until the person chooses: the browser's own text size, and on a large screen a little more.
float scale_of(const State& s) {
  if (s.look.text_scale > 0) return std::clamp(s.look.text_scale, 1.0F, 2.0F);
  const shell::Viewport& v = s.viewport;
  const float large = std::clamp(std::min(v.width_px / 1500, v.height_px / 860), 1.0F, 1.25F);
  return std::clamp(std::max(s.preferences.root_font_px / 16, large), 1.0F, 2.0F);
}

void read_pointer(State& s) {
  const shell::Pointer p = shell::pointer();
  s.pointer = {p.present ? p.x : -1,
               p.present ? p.y : -1,
               p.moved_y,
               p.wheel_px,
               p.down,
               p.pressed,
               p.released,
               p.kind != shell::Pointer::Kind::mouse};
  if (!p.pressed) return;
  s.press = {"", p.x, p.y, false};
}

void read_actions(State& s) {
  s.actions = shell::take_actions();
  for (const shell::MirrorAction& action : s.actions) {
    if (action.kind != Kind::focus || s.pointer.down) continue;
    s.reveal_id = action.id;
    s.reveal_glides = false;
  }
}

void read_platform(State& s) {
  s.viewport = shell::viewport();
  s.preferences = preferences_of(s.look);
  s.voice = shell::voice();
  s.scheme = scheme_of(s);
  const float scale = scale_of(s);
  if (scale != s.scale) s.text_cache.clear();
  s.scale = scale;
  s.last_ms = s.now_ms;
  s.now_ms = shell::now_ms();
}

constexpr std::size_t k_cached_texts_most = 1500;

}  // namespace

Ui::Ui() : state_(std::make_unique<State>()) {}
Ui::~Ui() = default;

void Ui::begin_frame() {
  State& s = *state_;
  CHECK(s.faces[0] != nullptr && s.faces[1] != nullptr, "fonts are loaded before the first frame");
  read_platform(s);
  read_pointer(s);
  read_actions(s);
  if (s.text_cache.size() > k_cached_texts_most) s.text_cache.clear();
  for (ImFont* face : s.faces) face->CurrentRasterizerDensity = s.viewport.density;
  s.list = ImGui::GetBackgroundDrawList();
  s.ground = palette().paper;
  s.want_frame = false;
  s.nodes.clear();
  s.texts.clear();
  s.parent.clear();
  s.dialog.drawn_id.clear();
  fill_box(s.list, {0, 0, s.viewport.width_px, s.viewport.height_px}, s.ground, 0);
}

void Ui::end_frame() {
  State& s = *state_;
  CHECK(!s.screen.open && !s.dialog.inside && !s.card.open, "every begin has its end");
  draw_settings(*this);
  if (s.dialog.open_id != s.dialog.drawn_id) want_frame(*this);
  if (s.dialog.drawn_id.empty() && !s.dialog.open_id.empty()) {
    focus(std::exchange(s.dialog.return_focus, {}));
  }
  s.dialog.open_id = s.dialog.drawn_id;
  if (s.pointer.released) s.press = {};
  const bool dark = s.scheme == Scheme::dark || s.scheme == Scheme::dark_contrast;
  shell::publish(
      {s.screen.now.id, s.screen.now.title, s.language, dark ? "dark" : "light", s.nodes});
  if (s.want_frame) shell::redraw(1, "kit");
}

const Palette& Ui::palette() const { return palette_of(state_->scheme); }
Scheme Ui::scheme() const { return state_->scheme; }
float Ui::text_scale() const { return state_->scale; }
bool Ui::reduced_motion() const { return state_->preferences.reduced_motion; }
double Ui::now_ms() const { return state_->now_ms; }
float Ui::width_px() const { return state_->viewport.width_px; }
float Ui::height_px() const { return state_->viewport.height_px; }
ImDrawList* Ui::draw_list() const { return state_->list; }
const Look& Ui::look() const { return state_->look; }

void Ui::set_look(const Look& look) {
  if (look == state_->look) return;
  state_->look = look;
  shell::redraw(3, "look");
}

bool Ui::remembered() const { return state_->remembered; }

void Ui::set_shared(bool shared) { state_->shared = shared; }

void Ui::set_remembered(bool remembered) {
  if (remembered == state_->remembered) return;
  state_->remembered = remembered;
  shell::redraw(3, "settings");
}

void Ui::tell_not_kept() {
  set_remembered(false);
  state_->not_kept = true;
}

void Ui::set_words(Words words) { state_->words = std::move(words); }
const Words& Ui::words() const { return state_->words; }

void Ui::set_languages(std::vector<Language> all, std::string now) {
  state_->languages = std::move(all);
  state_->language = std::move(now);
}

std::string Ui::take_asked_language() { return std::exchange(state_->asked_language, {}); }

float Ui::ease(std::string_view id, bool target) {
  State& s = *state_;
  const float to = target ? 1.0F : 0.0F;
  auto found = s.eases.find(id);
  if (found == s.eases.end()) found = s.eases.emplace(id, Ease{to, to, -1e9}).first;
  Ease& ease = found->second;
  const auto value = [&] {
    const double t = std::clamp((s.now_ms - ease.start_ms) / k_motion_ms, 0.0, 1.0);
    const auto left = static_cast<float>((1 - t) * (1 - t) * (1 - t));
    return ease.to + (ease.from - ease.to) * left;
  };
  if (ease.to != to) ease = {value(), to, s.now_ms};
  if (reduced_motion()) ease.start_ms = -1e9;
  const float now = value();
  if (now != to) want_frame(*this);
  return now;
}

void Ui::focus(std::string_view id) {
  if (!id.empty()) shell::move_focus(id);
}

void Ui::scroll_to(std::string_view id) {
  state_->reveal_id = id;
  state_->reveal_glides = true;
  shell::redraw(2, "scroll");
}

void Ui::say(std::string_view text) { shell::announce(text); }

State& Ui::state() { return *state_; }
const State& Ui::state() const { return *state_; }

}  // namespace rehale::kit
