// The part of the contract that is the same in the page and in native tests: who asked for a frame,
// what was done on the mirror, what has arrived. Must not know the browser or Dear ImGui.

#include "web/shell/host.h"

#include <algorithm>

#include "web/shell/check.h"
#include "web/shell/host_state.h"

namespace rehale::shell {
namespace {

constexpr double k_never = std::numeric_limits<double>::infinity();

void ask_for_frame(const char* cause) {
  State& s = state();
  if (s.frame_asked || s.stopped) return;
  s.frame_asked = true;
  platform::ask_frame(cause);
}

void tell_arrivals() {
  const auto arrived = std::exchange(state().arrived, {});
  for (const auto& [done, text] : arrived) done(text);
}

int ticket_for(State::Waiting waiting) {
  State& s = state();
  s.fetches.emplace(s.next_ticket, std::move(waiting));
  return s.next_ticket++;
}

}  // namespace

State& state() {
  static State the_state;
  return the_state;
}

void run(const App& app) { state().app = app; }

void start_app() {
  State& s = state();
  open_imgui();
  s.started = true;
  s.last_frame_ms = platform::now_ms();
  if (s.app.start != nullptr) s.app.start();
  redraw(3, "start");
}

void draw_frame() {
  State& s = state();
  s.frame_asked = false;
  if (s.stopped || !s.started) return;
  s.frames_left = std::max(0, s.frames_left - 1);
  s.in_frame = true;
  s.cause = "settle";
  s.asked_within = false;
  const bool heard = std::exchange(s.heard, false);
  tell_arrivals();
  const bool is_new = run_imgui_frame();
  s.actions.clear();  // those that nobody took are for nobody
  s.in_frame = false;
  // Nothing came in, nothing moves, and it looks as before: it has settled.
  if (!heard && !is_new && !s.asked_within) s.frames_left = 0;
  if (s.frames_left > 0) ask_for_frame(s.cause);
}

void wake_by_timer() {
  State& s = state();
  if (s.deadline_ms == k_never) return;
  if (platform::now_ms() < s.deadline_ms) {  // browsers may fire a little early
    platform::ask_wake(s.deadline_ms);
    return;
  }
  s.deadline_ms = k_never;
  redraw(1, "timer");
}

void push_action(MirrorAction action) {
  state().actions.push_back(std::move(action));
  redraw(3, "mirror");
}

void focus_changed(std::string id, bool by_keyboard) {
  State& s = state();
  if (id == s.focused_id) return;
  if (!s.focused_id.empty()) push_action({MirrorAction::Kind::blur, s.focused_id});
  s.focused_id = std::move(id);
  if (by_keyboard && !s.focused_id.empty()) push_action({MirrorAction::Kind::focus, s.focused_id});
  redraw(3, "focus");
}

void fetch_arrived(int ticket, Result<std::string> text) {
  State& s = state();
  const auto waiting = s.fetches.find(ticket);
  if (waiting == s.fetches.end()) return;
  State::Waiting told = std::move(waiting->second);
  s.fetches.erase(waiting);
  if (told.at_once) return told.done(std::move(text));
  s.arrived.emplace_back(std::move(told.done), std::move(text));
  redraw(3, "fetch");
}

double now_ms() { return platform::now_ms(); }
Viewport viewport() { return state().viewport; }
Preferences preferences() { return state().preferences; }
Voice voice() { return state().voice; }
Pointer pointer() { return state().pointer; }
const std::string& focused_id() { return state().focused_id; }
Fonts take_fonts() { return std::exchange(state().fonts, {}); }

std::string launch_option(std::string_view name) {
  const auto found = state().options.find(name);
  return found == state().options.end() ? std::string() : found->second;
}

void redraw(int frames, const char* cause) {
  State& s = state();
  if (frames > s.frames_left) {
    s.frames_left = frames;
    s.cause = cause;
  }
  if (s.in_frame) {
    s.asked_within = true;
  } else {
    s.heard = true;
    ask_for_frame(cause);
  }
}

void redraw_at(double at_ms) {
  State& s = state();
  if (at_ms >= s.deadline_ms) return;
  s.deadline_ms = at_ms;
  platform::ask_wake(at_ms);
}

void publish(MirrorFrame frame) {
  State& s = state();
  if (frame == s.shown) return;
  s.asked_within = true;  // it has not settled yet
  s.shown = std::move(frame);
  platform::show_mirror(s.shown);
}

std::vector<MirrorAction> take_actions() { return std::exchange(state().actions, {}); }

void move_focus(std::string_view id) { platform::focus(id); }

void announce(std::string_view text, bool urgent) { platform::announce(text, urgent); }

void fetch_text(const std::string& path, FetchDone done) {
  platform::fetch(ticket_for({std::move(done)}), path);
}

void ask_page(std::string_view name, std::string_view words, FetchDone done) {
  platform::ask(ticket_for({std::move(done)}), name, words);
}

void ask_page_at_once(std::string_view name, std::string_view words, FetchDone done) {
  platform::ask(ticket_for({std::move(done), true}), name, words);
}

int today() { return platform::today(); }

void show_error_panel(std::string_view title, std::string_view detail) {
  State& s = state();
  if (s.stopped) return;  // the first cause is the one that helps
  s.stopped = true;
  platform::stop(title, detail);
}

void reload() { platform::reload(); }

std::uint64_t random_seed() { return static_cast<std::uint64_t>(platform::random_whole()); }

void check_failed(const char* why, const char* file, int line) {
  show_error_panel("This page has stopped.",
                   std::string(why) + " (" + file + ":" + std::to_string(line) + ")");
  __builtin_trap();
}

}  // namespace rehale::shell
