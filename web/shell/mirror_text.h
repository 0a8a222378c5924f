// A mirror frame as one JSON text for web/js/mirror.js. Fields at their default are left out.
// Must not know the browser.
#pragma once

#include <string>

#include "web/shell/mirror_node.h"

namespace rehale::shell {

// Replaces what is in `out` (kept between calls so that it does not allocate again).
void write_mirror(const MirrorFrame& frame, std::string& out);

// The name of a role as mirror.js knows it: "radio_group".
const char* role_name(Role role);

}  // namespace rehale::shell
