// The shell's seam in a browser: exported functions that web/js calls, and platform::… as calls
// into the page. The only file that includes an Emscripten header. Must not know screens or
// content.

#include <emscripten/emscripten.h>

#include <cstdlib>
#include <string>

#include "web/shell/host_state.h"
#include "web/shell/mirror_text.h"
#include "web/shell/page_calls.h"
#include "web/shell/render_web.h"

namespace rehale::shell {
namespace {

// What rehale_hear carries. Twin of `hear` in web/js/bridge.js.
enum class Hear : int {
  option = 0,        // "name=value"
  language = 1,      //
  font_regular = 2,  // TTF bytes
  font_bold = 3,     //
  fetched = 4,       // text; number: ticket
  fetch_failed = 5,  // "code", unit separator, "path", unit separator, "detail"; number: ticket
  press = 6,         // id
  set_number = 7,    // id; number
  focus = 8,         // id or empty; number: 1 = by keyboard
  dismiss = 9,       // id or empty
  scroll = 10,       // number: CSS px
  redraw = 11,       // cause; number: frames
  error = 12,        // "title", unit separator, "detail"
  voice = 13,        // languages; number: 1 = speaking
};

constexpr char k_separator = '\x1f';

std::string inbox;   // bytes from the page
std::string outbox;  // bytes to the page

void tell(Tell what, std::string_view text, double number = 0) {
  page_tell(static_cast<int>(what), text.data(), text.size(), number);
}

// Cuts the part before the next separator off `text`.
std::string_view cut(std::string_view& text) {
  const std::size_t end = text.find(k_separator);
  const std::string_view part = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  return part;
}

void set_option(std::string_view text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos) return;
  state().options[std::string(text.substr(0, equals))] = text.substr(equals + 1);
}

Error read_error(std::string_view text) {
  Error error;
  error.code = cut(text);
  error.where = cut(text);
  error.detail = text;
  return error;
}

// Causes are few and from our own scripts; kept for as long as the page lives.
const char* keep_cause(std::string_view text) {
  static std::map<std::string, bool, std::less<>> causes;
  return causes.emplace(text, true).first->first.c_str();
}

void hear(Hear what, std::string_view text, double number) {
  using Kind = MirrorAction::Kind;
  State& s = state();
  switch (what) {
    case Hear::option:
      return set_option(text);
    case Hear::language:
      s.preferences.language = text;
      return;
    case Hear::font_regular:
      s.fonts.regular = text;
      return;
    case Hear::font_bold:
      s.fonts.bold = text;
      return;
    case Hear::fetched:
      return fetch_arrived(static_cast<int>(number), std::string(text));
    case Hear::fetch_failed:
      return fetch_arrived(static_cast<int>(number), tl::unexpected<Error>(read_error(text)));
    case Hear::press:
      return push_action({Kind::press, std::string(text)});
    case Hear::set_number:
      return push_action({Kind::set_number, std::string(text), number});
    case Hear::focus:
      return focus_changed(std::string(text), number != 0);
    case Hear::dismiss:
      return push_action({Kind::dismiss, std::string(text)});
    case Hear::scroll:
      return push_action({Kind::scroll, std::string(), number});
    case Hear::redraw:
      s.picture = 0;  // the canvas may have lost it
      return redraw(static_cast<int>(number), keep_cause(text));
    case Hear::error: {
      const std::string_view title = cut(text);
      return show_error_panel(title, text);
    }
    case Hear::voice:
      s.voice = {std::string(text), number != 0};
      return redraw(3, "voice");
  }
}

}  // namespace

namespace platform {

double now_ms() { return page_now(); }
void ask_frame(const char* cause) { tell(Tell::ask_frame, cause); }
void ask_wake(double at_ms) { tell(Tell::ask_wake, {}, at_ms); }
void focus(std::string_view id) { tell(Tell::focus, id); }
void announce(std::string_view text, bool urgent) { tell(Tell::announce, text, urgent ? 1 : 0); }
void fetch(int ticket, std::string_view path) { tell(Tell::fetch, path, ticket); }

void ask(int ticket, std::string_view name, std::string_view words) {
  tell(Tell::ask, std::string(name) + k_separator + std::string(words), ticket);
}

int today() { return page_today(); }

void no_memory() {
  page_tell(static_cast<int>(Tell::no_memory), "", 0, 0);
  __builtin_trap();
}

void reload() { tell(Tell::reload, {}); }
double random_whole() { return page_random(); }

void show_mirror(const MirrorFrame& frame) {
  write_mirror(frame, outbox);
  tell(Tell::mirror, outbox);
}

void stop(std::string_view title, std::string_view detail) {
  tell(Tell::stop, std::string(title) + k_separator + std::string(detail));
}

}  // namespace platform
}  // namespace rehale::shell

using namespace rehale::shell;  // NOLINT(google-build-using-namespace): below are only C names

extern "C" {

// A place for `size` bytes that rehale_hear will read.
EMSCRIPTEN_KEEPALIVE char* rehale_room(std::size_t size) {
  inbox.resize(size);
  return inbox.data();
}

EMSCRIPTEN_KEEPALIVE void rehale_hear(int what, double number) {
  hear(static_cast<Hear>(what), inbox, number);
}

EMSCRIPTEN_KEEPALIVE void rehale_preferences(int flags, float root_font_px) {
  Preferences& p = state().preferences;
  p.dark = (flags & 1) != 0;
  p.more_contrast = (flags & 2) != 0;
  p.forced_colors = (flags & 4) != 0;
  p.reduced_motion = (flags & 8) != 0;
  p.root_font_px = root_font_px;
}

EMSCRIPTEN_KEEPALIVE void rehale_viewport(float width_px, float height_px, float density) {
  state().viewport = {width_px, height_px, density};
}

EMSCRIPTEN_KEEPALIVE void rehale_pointer(int event, int kind, float x, float y) {
  push_pointer(static_cast<PointerEvent>(event), static_cast<Pointer::Kind>(kind), x, y);
}

EMSCRIPTEN_KEEPALIVE void rehale_wheel(float notches) { push_wheel(notches); }
EMSCRIPTEN_KEEPALIVE void rehale_start() { start_app(); }
EMSCRIPTEN_KEEPALIVE void rehale_frame() { draw_frame(); }
EMSCRIPTEN_KEEPALIVE void rehale_wake() { wake_by_timer(); }
EMSCRIPTEN_KEEPALIVE void rehale_context_back() {
  state().picture = 0;
  send_textures_again();
}

EMSCRIPTEN_KEEPALIVE const char* rehale_export_run() {
  const App& app = state().app;
  outbox = app.export_run != nullptr ? app.export_run() : std::string();
  return outbox.c_str();
}

EMSCRIPTEN_KEEPALIVE const char* rehale_content_id() {
  const App& app = state().app;
  outbox = app.content_id != nullptr ? app.content_id() : std::string();
  return outbox.c_str();
}

}  // extern "C"
