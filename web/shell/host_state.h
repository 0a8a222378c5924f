// Inside of the shell: what both hosts share, and the seam that each of them fills (platform::…).
// For files of web/shell only. Must not know the browser.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "web/shell/app.h"
#include "web/shell/host.h"

struct ImDrawData;

namespace rehale::shell {

using FetchDone = std::function<void(Result<std::string>)>;

struct State {
  App app;
  Fonts fonts;
  Preferences preferences;
  Voice voice;
  Viewport viewport;
  Pointer pointer;
  std::map<std::string, std::string, std::less<>> options;

  std::vector<MirrorAction> actions;
  std::string focused_id;
  MirrorFrame shown;  // what the mirror shows now

  int next_ticket = 1;
  struct Waiting {
    FetchDone done;
    bool at_once = false;  // told when it arrives, not before a frame
  };
  std::map<int, Waiting> fetches;                                  // on their way
  std::vector<std::pair<FetchDone, Result<std::string>>> arrived;  // told before the next frame

  int frames_left = 0;
  bool frame_asked = false, in_frame = false, started = false, stopped = false;
  bool heard = false;  // since the last frame: input, an action, a file, a change of the page
  bool asked_within = false;  // for more frames, in the frame itself: something moves
  std::uint64_t picture = 0;  // names what was drawn last; 0: draw whatever it is
  const char* cause = "";
  double deadline_ms = std::numeric_limits<double>::infinity();
  double last_frame_ms = 0;
};

State& state();

// ---- host.cpp: what a host tells the shell
void start_app();      // once, when fonts, preferences, options and viewport are set
void draw_frame();     // the frame that platform::ask_frame asked for
void wake_by_timer();  // the moment that platform::ask_wake asked for
void push_action(MirrorAction action);
void focus_changed(std::string id, bool by_keyboard);  // empty id: no mirror element has it now
void fetch_arrived(int ticket, Result<std::string> text);

// ---- imgui_frame.cpp
enum class PointerEvent : unsigned char { move, down, up, cancel, leave };
void open_imgui();
void push_pointer(PointerEvent event, Pointer::Kind kind, float x, float y);
void push_wheel(float notches);  // up is positive
bool run_imgui_frame();          // NewFrame, the app, Render, platform::draw; false: nothing new

// ---- filled by host_web.cpp or host_null.cpp
namespace platform {
double now_ms();
void ask_frame(const char* cause);
void ask_wake(double at_ms);
void show_mirror(const MirrorFrame& frame);
void focus(std::string_view id);
void announce(std::string_view text, bool urgent);
void fetch(int ticket, std::string_view path);
void ask(int ticket, std::string_view name, std::string_view words);
int today();
void stop(std::string_view title, std::string_view detail);
void reload();
[[noreturn]] void no_memory();  // must not allocate
double random_whole();          // below 2^53
void draw(ImDrawData* data);
}  // namespace platform

}  // namespace rehale::shell
