// "How it looks": light or dark, size of the words, stronger contrast. Opened by the top bar of
// every screen; wholly the kit's. Must not know screens.
#pragma once

#include "web/kit/ui.h"

namespace rehale::kit {

void open_look_dialog(Ui& ui);
void draw_look_dialog(Ui& ui);  // when open; after everything else of the frame

}  // namespace rehale::kit
