// The one page for the visit as plain lines, "kind text": web/js/sheet.js makes it a document.
// Kinds: qr (a link), title, fact, section, item, why, how, well, script, ask, tick, caution,
// foot. Every sentence is content's or the interface's.
#pragma once

#include <string>

#include "web/screens/app.h"

namespace rehale::screens {

[[nodiscard]] std::string write_sheet(const App& app);

}  // namespace rehale::screens
