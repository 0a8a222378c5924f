// The whole platform contract: all that the rest of web/ may ask of a browser. host_web.cpp answers
// in the page, host_null.cpp in native tests. Must not know any screen, widget or content.
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
  std::string language = "en";  // BCP 47, as navigator.languages: "pt-BR,en"; the dearest first
};

// What the device can read aloud by itself, without a network; found some time after the start.
struct Voice {
  std::string languages;  // two or three letters each: "en es"; empty: none, or not known yet
  bool speaking = false;
};

struct Viewport {
  float width_px = 360, height_px = 640;  // CSS px
  float density = 1;                      // device pixels a CSS px
};

// The one pointer that counts (first finger, mouse or pen), in step with Dear ImGui's io of this
// frame. The shell has already dropped other fingers and the second tap of a trembling hand (same
// place, within 400 ms), so every press here is meant. Acts happen on release, where the press
// began.
struct Pointer {
  enum class Kind : unsigned char { mouse, touch, pen } kind = Kind::mouse;
  bool present = false;  // it is over the page; never so after a finger has gone
  float x = 0, y = 0, moved_x = 0, moved_y = 0;          // CSS px; moved: since the last frame
  bool down = false, pressed = false, released = false;  // pressed, released: in this frame
  // A finger or pen that went further than 10 px since it came down: it scrolls, it presses
  // nothing. Still true in the frame of its release. A mouse never drags.
  bool dragging = false;
  float wheel_px = 0;  // content should move down by this (wheel up is positive, as io.MouseWheel)
};

// Something done on a mirror element (keyboard, screen reader, switch, test).
struct MirrorAction {
  enum class Kind : unsigned char {
    press,       // a button, radio, checkbox… was activated
    set_number,  // a spin was given `number`
    focus,       // got the focus by keyboard: bring it into view if it is not
    blur,        // lost it
    dismiss,     // Escape; id: the open dialog, or empty
    scroll,      // arrow, page, home, end keys on no control: move the body down by `number` CSS px
  } kind = Kind::press;
  std::string id;
  double number = 0;
};

double now_ms();  // monotonic; only for durations the person makes
Viewport viewport();
Preferences preferences();
Voice voice();
Pointer pointer();
std::uint64_t
random_seed();  // from the browser's random device; below 2^53, so that it fits a link
std::string launch_option(
    std::string_view name);  // "?seed=7" -> launch_option("seed") == "7"; "" if absent

// Something changed: draw this many frames, then rest. The cause is listed by ?debug.
void redraw(int frames = 3, const char* cause = "screen");
void redraw_at(double at_ms);     // one frame not before at_ms (timers); the earliest asked wins
void publish(MirrorFrame frame);  // after drawing: the mirror follows if anything differs
std::vector<MirrorAction> take_actions();  // since the last frame, in order
const std::string& focused_id();           // mirror element with DOM focus; "" if none
void move_focus(std::string_view id);      // after this frame, once such an element is there
void announce(std::string_view text, bool urgent = false);  // live region, each call read once

// Reads a text file next to the page ("content/library.json"). done runs before a later frame.
void fetch_text(const std::string& path, std::function<void(Result<std::string>)> done);

// Asks a part of the page that is loaded when first needed (web/js/asked.js). done runs before
// a later frame, with what it gives back. Errors: "network", "refused" (the browser would not).
//   "qr": a text -> its QR code, level M: lines of 0 and 1, dark is 1; no quiet zone
//   "copy": a text, to the clipboard
//   "save": file name, line break, text
//   "open": -> the text of a file that the person picks; "" when they pick none
//   "kept": -> what this device keeps for the person; "" when nothing. Looking makes nothing.
//   "keepResults": a text, instead of what was kept    "forget": all of it goes
//   "print": a sheet as web/screens/sheet.h writes it
// And of web/js/desk.js:
//   "deskAsk": words of a window to paste, pick files and scan in -> "read", or "" when it was
//   closed
//   "deskNext": about how many letters -> the next piece of what was given there
//   (web/screens/desk_state.h)
//   "slips": slips as web/screens/slips.h writes them
//   keys and seals: web/js/sealing.js says what each takes and gives
// Of web/js/kiosk.js:
//   "kioskStaff": words of a window that asks for the staff's code -> "yes" or ""
//   "kioskHealth": -> minutes since it was opened, MB of memory, visits, late frames,
//   failures: a line each
//   "kioskSpeech": on a shared device: what gets the focus is said, each screen read. The first
//   line says how, as "read" takes it; then words for roles and states; "": no more
// Of the page itself:
//   "keep": a setting's name, line break, a text to keep on this device; no text: no more
//   "read": the screen aloud; "stop", or how: "slowly", and "medium" or "quiet"; "": as ever.
//   What comes of it is told by voice()
inline constexpr std::string_view k_ask_keep = "keep", k_ask_read = "read";
void ask_page(std::string_view name, std::string_view words,
              std::function<void(Result<std::string>)> done);
// The same for long work in small pieces: done runs when the answer is there, between frames and
// while the page is hidden, too. It draws nothing; who wants a frame asks for one.
void ask_page_at_once(std::string_view name, std::string_view words,
                      std::function<void(Result<std::string>)> done);

// Days since 1970-01-01 by the clock on the wall here (core/base/civil.h).
int today();

// What is told with the start besides the address' own options: these cannot stand in it.
inline constexpr std::string_view k_option_code = "#r";           // a result that was handed over
inline constexpr std::string_view k_option_asked = "#a";          // a practice that was set
inline constexpr std::string_view k_option_sealed = "#s";         // a result that was sealed
inline constexpr std::string_view k_option_set = "#set";          // to set a practice
inline constexpr std::string_view k_option_care = "#c";           // the numbers of an inhaler
inline constexpr std::string_view k_option_address = "#address";  // the page, without '?' and '#'
inline constexpr std::string_view k_option_build = "#build";
inline constexpr std::string_view k_option_offline =
    "#offline";  // "yes": works without a network; "file"
inline constexpr std::string_view k_option_desk =
    "#desk";  // "1": the educator's way in was asked for
inline constexpr std::string_view k_option_settings = "#settings";  // kept by "keep" earlier
// A shared device (web/screens/kiosk.h): "1"; what "keep" kept as "kiosk" and "counted"; and a
// number that changes whenever a key, a finger or the mouse button is pressed.
inline constexpr std::string_view k_option_kiosk = "#kiosk";
inline constexpr std::string_view k_option_kiosk_settings = "#kiosk-settings";
inline constexpr std::string_view k_option_counted = "#counted";
inline constexpr std::string_view k_option_touched = "#touched";

// A defect or a refused platform: stops drawing and shows the page's own error panel with a way
// out.
void show_error_panel(std::string_view title, std::string_view detail);
void reload();  // the page, from the start

// Both faces as TTF bytes, there from the start; handed out once (kit copies them).
struct Fonts {
  std::string regular, bold;
};
Fonts take_fonts();

}  // namespace rehale::shell
