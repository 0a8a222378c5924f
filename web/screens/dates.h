// A day in words, as the language shown writes it: "25 November 2026", "25 de noviembre de 2026".
// Must not know clocks.
#pragma once

#include <string>

#include "core/base/civil.h"
#include "core/catalog/load.h"

namespace rehale::screens {

// Days outside [k_first_day, k_last_day] give "".
[[nodiscard]] std::string date_words(const catalog::Texts& texts, Day day);
// 1-12
[[nodiscard]] std::string month_words(const catalog::Texts& texts, int month);

}  // namespace rehale::screens
