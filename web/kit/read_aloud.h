// Reading the screen aloud: whether that can be here, and the asking for it. What is read is the
// mirror as it stands (web/js/read_aloud.js). Must not know screens.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::kit {

// A voice of this device speaks the language of the words.
bool can_read_aloud(const Ui& ui);
bool is_reading(const Ui& ui);
// How it shall be read, as k_ask_read (web/shell/host.h) takes it: "", "slowly", "slowly quiet".
std::string reading_wish(const Ui& ui);
void start_or_stop_reading(Ui& ui);

}  // namespace rehale::kit
