// The whole platform contract: all that the rest of web/ may ask of a browser. host_web.cpp answers in
// the page, host_null.cpp in native tests. Must not know any screen, widget or content.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "web/shell/mirror_node.h"

namespace rehale::shell {

// What the person's system asks for; read at start and followed while running.
struct Preferences {
  bool dark = false, more_contrast = false, forced_colors = false, reduced_motion = false;
  float root_font_px = 16;      // the browser's own text size; 16 = normal
  std::string language = "en";  // BCP 47, first of navigator.languages
};

struct Viewport {
  float width_px = 360, height_px = 640;  // CSS px
  float density = 1;                      // device pixels a CSS px
};

// Something done on a mirror element (keyboard, screen reader, switch, test).
struct MirrorAction {
  enum class Kind : unsigned char { press, set_number, focus, blur } kind = Kind::press;
  std::string id;
  double number = 0;
};

double now_ms();             // monotonic; only for durations the person makes
Viewport viewport();
Preferences preferences();
std::uint64_t random_seed();                           // from the browser's random device
std::string launch_option(std::string_view name);  // "?seed=7" -> launch_option("seed") == "7"; "" if absent

void redraw(int frames = 3);         // something changed: draw this many frames, then rest
void redraw_at(double at_ms);        // one frame not before at_ms (timers); the earliest asked wins
void publish(MirrorFrame frame);     // after drawing: the mirror follows if anything differs
std::vector<MirrorAction> take_actions();           // since the last frame, in order
std::string focused_id();                           // mirror element with DOM focus; "" if none
void move_focus(std::string_view id);               // after the next publish
void announce(std::string_view text, bool urgent = false);  // live region, each call read once

// Reads a text file next to the page ("content/library.json"). done runs before a later frame.
void fetch_text(std::string path, std::function<void(Result<std::string>)> done);

// A defect or a refused platform: stops drawing and shows the page's own error panel with a way out.
void show_error_panel(std::string_view title, std::string_view detail);

}  // namespace rehale::shell
