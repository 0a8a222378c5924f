// Settings: size of the words, colours, language, movement, hand, reading aloud, and whether they
// are remembered. Opened by the top bar of every screen; wholly the kit's. Must not know screens.
#pragma once

#include "web/kit/ui.h"

namespace rehale::kit {

void open_settings(Ui& ui);
void close_settings(Ui& ui);
void draw_settings(Ui& ui);  // when open; after everything else of the frame

}  // namespace rehale::kit
