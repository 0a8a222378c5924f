// Small drawn marks: no font has them. Two-tone at most, 3 px strokes at 32 px.
// Must not know widgets or words.
#pragma once

#include "web/kit/ui.h"

namespace rehale::kit {

enum class Icon : unsigned char {
  none,
  back,
  help,  // question mark
  look,  // large and small letter a
  sun,
  moon,
  going_well,  // tick that is a leaf
  to_mend,     // small spanner
  up,
  down,
  plus,
  minus,
  play,
  stop,
  again,
  undo,
  chevron_right,
  chevron_down,
  close,
  hand,     // pointing hand
  ring,     // hollow circle: "this one too"
  caution,  // rounded triangle with a stroke
  speaker,  // a box that sounds: read aloud
};

// Centred in the rectangle, as large as its shorter side.
void draw_icon(ImDrawList* list, Icon icon, Rect rect, Colour colour);

}  // namespace rehale::kit
