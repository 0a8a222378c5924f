// What the kit keeps between and during frames. For files of web/kit only.
// Must not know screens or content.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "web/kit/screen_frame.h"
#include "web/kit/ui.h"
#include "web/shell/host.h"

struct ImFont;

namespace rehale::kit {

enum class Face : unsigned char { regular, bold };

// One text, wrapped: byte ranges of its lines.
struct TextBlock {
  struct Line {
    std::size_t begin = 0, end = 0;
    float width = 0;
  };
  std::vector<Line> lines;
  float width = 0, height = 0, line_px = 0;
};

// Words as they were drawn, for tests: nothing may lie over them or cut them.
struct DrawnText {
  std::string words;
  Rect rect;
  Rect clip;  // w == 0: none
  bool breaks_a_word = false;
};

struct PointerState {
  float x = -1, y = -1;
  float dy = 0;
  float wheel = 0;
  bool down = false, pressed = false, released = false;
  bool touch = false;
};

// A press that has begun and not yet ended.
struct Press {
  std::string id;  // empty: nothing, or on bare ground
  float x = 0, y = 0;
  bool began_in_area = false;  // of the scroll area under it
};

// A region that scrolls: the body of a screen or of a dialog.
struct ScrollArea {
  std::string key;     // visit it belongs to; another one starts at the top
  float offset = 0;    // px scrolled down
  float velocity = 0;  // px a second, after a flick
  double glide_from = 0, glide_to = 0, glide_start_ms = -1;  // scroll_to
  float shift = 0;       // how far the content is pushed down to sit well
  float content_px = 0;  // height of the content last frame
  Rect view;
  float right_x = 0;                             // of the column
  float top_y = 0, pad_top = 0;                  // where this frame's content began
  std::size_t first_vertex = 0, first_node = 0;  // of this frame's content
  bool dragging = false;
};

// Where the next widget goes.
struct Column {
  float x = 0, width = 0, y = 0;
  bool fresh = true;  // nothing placed yet: no gap before the first widget
};

struct Ease {
  float from = 0, to = 0;
  double start_ms = 0;
};

struct ScreenState {
  Screen now;
  bool open = false;  // between begin_screen and end_screen
  bool two_columns = false;
  bool pinned = true;    // actions stay at the bottom (else they flow after the content)
  float top_px = 0;      // height of the top bar
  float actions_px = 0;  // height of the action area last frame
  float words_px = 0;    // height of the words last frame, picture not counted
  bool words_known = false;
  float picture_px = 0, picture_liked_px = 0;
  Rect stage;                // where body and actions may be
  std::string visit;         // what the last frame showed
  std::string told_why_not;  // why a main action is not ready, shown after a press on it
  std::vector<shell::MirrorNode> waiting;  // the picture, read after the heading
  bool heading_seen = false;
  bool focus_heading = false;  // this visit is new on the same screen
  float words_top = 0;
};

struct CardState {
  bool open = false;
  std::string id;
  std::size_t first_vertex = 0, last_vertex = 0;
  float top = 0, middle = 0, guessed_px = 0;
  Column outer;
  std::size_t node = 0;
  Colour ground;
  std::string parent;
};

struct DialogState {
  std::string open_id;   // of the dialog drawn in the last frame
  std::string drawn_id;  // of the one drawn in this frame
  bool inside = false;
  std::string return_focus;
  float content_px = 0, head_px = 0;
};

struct State {
  Look look;
  Words words;
  std::vector<Language> languages;
  std::string language = "en", asked_language;
  shell::Preferences preferences;  // what holds now: the system's, where the person chose nothing
  shell::Voice voice;
  shell::Viewport viewport;
  Scheme scheme = Scheme::light;
  float scale = 1;
  double now_ms = 0, last_ms = 0;

  ImFont* faces[2] = {nullptr, nullptr};
  float em[2] = {1, 1};  // Dear ImGui size of a face for one CSS px of em size
  std::unordered_map<std::string, TextBlock> text_cache;

  ImDrawList* list = nullptr;
  Colour ground;  // what is behind the widget being drawn
  PointerState pointer;
  Press press;
  double last_activation_ms = -1e9;
  bool want_frame = false;

  std::vector<shell::MirrorAction> actions;
  std::vector<shell::MirrorNode> nodes;
  std::vector<DrawnText> texts;  // of this frame, those of an open dialog only
  std::string parent;            // of the nodes recorded now

  ScreenState screen;
  DialogState dialog;
  CardState card;
  Column column;
  ScrollArea body, dialog_body;
  ScrollArea* area = nullptr;  // the one being filled
  bool clip_on = false;
  Rect clip;

  std::string reveal_id;  // brought into view at the end of this frame
  bool reveal_glides = false;
  bool settings_open = false;
  bool shared = false;  // a device of many: nobody's settings are kept
  bool remembered = false, not_kept = false;
  std::map<std::string, Ease, std::less<>> eases;
  std::map<std::string, std::string, std::less<>> picked;                          // ordering
  std::map<std::string, std::vector<std::vector<std::string>>, std::less<>> undo;  // ordering
  std::map<std::string, float, std::less<>> slides;
};

}  // namespace rehale::kit
