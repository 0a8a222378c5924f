// Cards that hold other widgets, disclosures, notices and dialogs. Every tone is told by a word and
// a shape as well as a colour.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::kit {

enum class Tone : unsigned char { plain, going_well, to_mend, caution };

struct Card {
  std::string id;
  Tone tone = Tone::plain;
  std::string
      label;  // beside the tone's mark; default: the kit's words ("You have this", "To do better")
};
// Widgets between the two calls flow inside the card. Cards do not nest.
void begin_card(Ui& ui, const Card& card);
void end_card(Ui& ui);

// "Why?": returns the new state. The caller draws what it opens, right after, when open.
struct Disclosure {
  std::string id, label;
};
bool disclosure(Ui& ui, const Disclosure& disclosure, bool open);

// One sentence on a saffron ground with a caution mark.
void notice(Ui& ui, std::string_view id, std::string_view text);

// Modal: called after end_screen, only while it is open. Widgets between the two calls flow inside;
// everything else is inert. True from begin_dialog: the person closed it (its button or Escape).
struct Dialog {
  std::string id, title;
};
bool begin_dialog(Ui& ui, const Dialog& dialog);
void end_dialog(Ui& ui);

}  // namespace rehale::kit
