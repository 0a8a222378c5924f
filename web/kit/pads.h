// Big pads to do things with, two in a row: each acts on release, as every button; a caller that
// wants to know of a finger held down can ask for that too. Must not know what a pad does.
#pragma once

#include <string>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

struct Pad {
  std::string id;
  std::string label;
  std::string name;   // what a screen reader says, holds the label; default: the label
  bool main = false;  // filled: the one to press now
};

struct Pads {
  std::string id;
  std::string name;  // of the group, not drawn
  std::vector<Pad> pads;
};

struct PadPress {
  int activated = -1;  // pressed and released, or by the mirror, in this frame
  int down = -1;       // a finger or mouse button is on it
};

PadPress pads(Ui& ui, const Pads& pads);

// Whether a finger or mouse button is down, wherever it began.
[[nodiscard]] bool finger_down(const Ui& ui);

// A calm guide for something that lasts: a ring and whole seconds; with reduced motion the number
// alone. With an aim the ring is full when it is reached; without one it goes round once a minute,
// as a clock's hand, and says nothing of right.
struct Pace {
  std::string id;
  double elapsed_ms = 0;
  double aim_ms = 0;  // 0: none
  std::string words;  // below the number: "of 10"
  std::string name;   // of the number, for the mirror: "{seconds} seconds" filled in
};
void pace(Ui& ui, const Pace& pace);

}  // namespace rehale::kit
