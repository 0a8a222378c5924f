// The frame that every screen shares: top bar, scrolling body, actions at the bottom. Body widgets
// are called between begin_screen and end_screen and flow downward. Must not know any one screen.
#pragma once

#include <string>

#include "web/kit/icons.h"
#include "web/kit/ui.h"

namespace rehale::kit {

// A row of stepping stones. of == 0: none.
struct Progress {
  int here = 0;       // 1-based stone the person stands on
  int of = 0;         // most there will be
  std::string words;  // "Question 3, up to 12"
};

struct Screen {
  std::string id;  // stable name: "question"
  std::string
      visit;  // what is shown on it: a change scrolls to the top and focuses the h1; default id
  std::string title;  // document title
  bool back = false;  // a back button at the left of the top bar
  Progress progress;
  bool top_buttons = true;  // reading aloud, help and settings, right of the top bar
  bool help = true;         // false: where there may be no words for it
};

enum class TopPress : unsigned char { none, back, help };  // the others are handled by the kit

TopPress begin_screen(Ui& ui, const Screen& screen);

struct ActionButton {
  std::string id;  // empty: there is no such button
  std::string label;
  bool enabled = true;
  std::string why_not;  // told when a not yet enabled button is pressed: "Pick one answer first"
  Icon icon = Icon::none;
};

// At most one main action a screen; quiet is a second, outlined one, drawn apart from it.
struct Actions {
  ActionButton main, quiet;
  std::string note;  // a line above them that stays in view: "Teaching estimate"
};

enum class ActionPress : unsigned char { none, main, quiet };

ActionPress end_screen(Ui& ui, const Actions& actions = {});

// The big picture of a screen, called before the words. Wide screens: left column, the words right
// of it. Phones: on top, shrinking before the words do. Read after the first heading.
struct Picture {
  std::string id;
  std::string alternative;  // the picture in words
  DrawPicture draw;
  float aspect = 4.0F / 3.0F;  // width : height it likes
  float least_px = 120;        // never drawn lower than this
};
void picture(Ui& ui, const Picture& picture);

// Extra empty room between two widgets, in grid steps of 8 px.
void gap(Ui& ui, float steps = 1);

}  // namespace rehale::kit
