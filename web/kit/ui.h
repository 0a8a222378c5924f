// The frame all widgets draw in: theme, fonts, text scale, clock, pointer, mirror. One Ui lives as
// long as the page. Must not know screens, content or the browser (web/shell tells it what it
// needs).
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "web/kit/theme.h"
#include "web/kit/words.h"
#include "web/shell/mirror_node.h"

struct ImDrawList;

namespace rehale::kit {

using shell::Rect;
struct State;  // web/kit/state.h: for files of the kit only

// Until the person chooses, what their system asks for holds, and is followed when it changes.
enum class Wish : unsigned char { system, yes, no };

// What the person chose in the settings; kept by the app between visits if they agree.
struct Look {
  enum class Ground : unsigned char { system, light, dark } ground = Ground::system;
  Wish more_contrast = Wish::system;
  Wish still = Wish::system;  // nothing moves by itself
  float text_scale = 0;       // 1…2; 0 = follow the browser's own text size
  bool left_hand = false;     // what is pressed stands at the left where the layout has a side
  bool read_slowly = false;
  enum class Loudness : unsigned char { loud, medium, quiet } loudness = Loudness::loud;
  friend bool operator==(const Look&, const Look&) = default;
};

// A language the words can be shown in. id: BCP 47; name: as its own speakers call it.
struct Language {
  std::string id, name;
};

class Ui {
 public:
  Ui();
  ~Ui();
  Ui(const Ui&) = delete;
  Ui& operator=(const Ui&) = delete;

  // Both faces of the one family, as TTF bytes. Before the first frame, with a Dear ImGui context.
  // False when a face cannot be read.
  bool load_fonts(std::string_view regular_ttf, std::string_view bold_ttf);

  // Between Dear ImGui's NewFrame and Render, around the one screen (and its dialogs). end_frame
  // publishes the mirror and asks the shell for more frames only while something moves.
  void begin_frame();
  void end_frame();

  // ---- what screens may read
  const Palette& palette() const;
  Scheme scheme() const;
  float text_scale() const;  // 1…2
  bool reduced_motion() const;
  double now_ms() const;  // this frame's time
  float width_px() const;
  float height_px() const;
  ImDrawList* draw_list() const;  // for pictures

  const Look& look() const;
  void set_look(const Look& look);
  // The person agreed that their settings are kept on this device.
  bool remembered() const;
  void set_remembered(bool remembered);
  void set_shared(bool shared);  // a device of many people: that is not offered
  void tell_not_kept();          // they agreed, and this browser would not
  void set_words(Words words);
  const Words& words() const;
  // What the words shown are in (told to the mirror), and what else the person may pick beside the
  // look. The kit only asks; whoever has the words changes them and then calls this again.
  void set_languages(std::vector<Language> all, std::string now);
  std::string take_asked_language();  // "" when none was picked since

  // Eased 0…1 towards target (0 or 1) over 300 ms, one value an id; asks for frames while it moves;
  // jumps with reduced motion. The first call of an id starts at the target.
  float ease(std::string_view id, bool target);

  void focus(std::string_view id);      // keyboard focus to a node, after this frame
  void scroll_to(std::string_view id);  // brings a node of the body into view, next frame
  void say(std::string_view text);      // polite announcement, once

  State& state();
  const State& state() const;

 private:
  std::unique_ptr<State> state_;
};

// Draws a picture of its own inside the rectangle, with ui.draw_list(). Says nothing to the mirror:
// the widget that calls it does, from the alternative text.
using DrawPicture = std::function<void(Ui&, Rect)>;

}  // namespace rehale::kit
