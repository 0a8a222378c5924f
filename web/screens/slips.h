// A set practice on paper as plain lines, "kind text": web/js/slips.js makes slips of them. Kinds:
// count (how many are printed), qr (a link), title, step, line, name, foot.
#pragma once

#include <string>

#include "web/screens/app.h"

namespace rehale::screens {

inline constexpr int k_slips_a_sheet = 30;

// In the language of these texts, which is the one that was set.
[[nodiscard]] std::string write_slip(const SetPractice& set, const catalog::Texts& texts);
[[nodiscard]] std::string write_slips(const SetPractice& set, const catalog::Texts& texts);

}  // namespace rehale::screens
