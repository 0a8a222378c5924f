// Buttons in the flow of the body. The main action of a screen belongs to end_screen instead.
// All act on release and return true once when activated, by pointer or through the mirror.
#pragma once

#include <string>
#include <vector>

#include "web/kit/icons.h"
#include "web/kit/ui.h"

namespace rehale::kit {

struct Button {
  std::string id;
  std::string label;
  Icon icon = Icon::none;
  std::string name;         // what a screen reader says, holds the label; default: the label
  std::string description;  // more, read after the name
  bool enabled = true;
  std::string language;  // BCP 47, where the label is not in the screen's own
};

bool main_button(Ui& ui, const Button& button);  // filled, 64 px, full width on phones
bool quiet_button(Ui& ui,
                  const Button& button);  // outlined, 64 px, as wide as its label (phones: full)
bool text_button(Ui& ui, const Button& button);             // underlined words, 48 px
bool toggle_button(Ui& ui, const Button& button, bool on);  // returns the new state

// A link that leaves the page: recorded as a real a[href]; the mirror follows it.
struct Link {
  std::string id, label, href;
};
void text_link(Ui& ui, const Link& link);

// Big cards to pick one thing at once, each with a picture: "which device do you hold?". Rows on
// phones, a grid of 2 or 4 columns on wider screens.
struct PickCard {
  std::string id;
  std::string label;  // "Spray inhaler"
  std::string tell;   // "A metal can in a plastic case."
  DrawPicture draw;
};
struct CardGrid {
  std::string id;
  std::string name;  // the question, not drawn
  std::vector<PickCard> cards;
};
int card_grid(Ui& ui, const CardGrid& grid);  // index of the card activated in this frame, or -1

}  // namespace rehale::kit
