// Parts of the screen "set a practice", a file each.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

void draw_set_more(App& app);  // number of questions, language, steps to look at
void draw_set_seal(App& app);  // the educator's key

// The lines of the dialog that asks for a passphrase (web/js/key_dialog.js): of a new key
// ("makeKey"), or of one that is there ("unlock").
[[nodiscard]] std::string passphrase_words(const App& app, bool is_new);

// "AbCd EfGh": tells two keys apart at a glance.
[[nodiscard]] std::string mark_of(const exchange::PublicKey& key);

// Families picked, in the library's order.
[[nodiscard]] std::vector<catalog::Id> set_families(const App& app);

}  // namespace rehale::screens
