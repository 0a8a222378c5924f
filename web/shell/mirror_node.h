// What a drawn thing is, in words a screen reader, a keyboard and a test can use: one node of the
// page's mirror. Plain data. Must not know Dear ImGui, the DOM or any screen.
#pragma once

#include <string>
#include <vector>

namespace rehale::shell {

// Each role becomes one real element in web/js/mirror.js (h1, p, button, input…).
enum class Role : unsigned char {
  group,        // div role=group, named: holds children
  radio_group,  // div role=radiogroup, named
  list,         // ul/ol
  list_item,    // li: text, or holds children
  heading,      // h1…h6 by level
  paragraph,    // p
  image,        // div role=img with the picture told in words
  button,       // button
  toggle,       // button aria-pressed
  disclosure,   // button aria-expanded
  radio,        // input type=radio
  checkbox,     // input type=checkbox
  spin,         // input type=number: value, min, max, step, value text
  link,         // a href
  progress,     // progress: value of max, told in words
  dialog,       // role=dialog aria-modal: everything outside it is inert
  status,       // p role=status: stays on the page, polite
  table,        // div role=table, named: holds rows
  row,          // div role=row: holds headers and cells
  column_head,  // div role=columnheader
  row_head,     // div role=rowheader
  cell,         // div role=cell
};

struct Rect {
  float x = 0, y = 0, w = 0, h = 0;  // CSS px from the canvas' top left corner
  bool operator==(const Rect&) const = default;
};

struct MirrorNode {
  std::string id;      // stable over frames, unique on the screen
  std::string parent;  // id of the holding node, empty = the screen itself
  Role role = Role::paragraph;
  std::string name;         // accessible name; contains the visible label
  std::string description;  // more, read after the name; may be empty
  std::string value;        // value text, or href of a link; an ordering card's own words
  std::string language;     // BCP 47, where the name is not in the screen's own
  int level = 0;            // heading level
  double number = 0, min = 0, max = 0, step = 1;  // spin, progress
  int position = 0, set_size = 0;                 // list items, ordering cards (1-based; 0 = none)
  bool checked = false, expanded = false, current = false;
  bool disabled = false;   // aria-disabled: stays in the tab order, its press is still told
  bool focusable = false;  // no control, but move_focus can reach it (an h1 always can)
  Rect rect;               // as laid out, also when scrolled out of view
  Rect clip;  // the scroll area that holds it; w == 0: none. Parts outside it hit nothing
  bool operator==(const MirrorNode&) const = default;
};

// The whole screen in reading order (parents before children).
struct MirrorFrame {
  std::string screen;  // stable name of the screen: "choose-device"
  std::string title;   // document title
  std::string language;
  // The ground drawn on, "light" or "dark", for what the page itself draws (focus ring, typed
  // number); empty: as the system asks.
  std::string ground;
  std::vector<MirrorNode> nodes;
  bool operator==(const MirrorFrame&) const = default;
};

}  // namespace rehale::shell
