// A day as people say it. Must not know screens.
#pragma once

#include <string>

#include "core/base/civil.h"
#include "core/catalog/model.h"

namespace rehale::screens {

// "10 December 2026", in the language of these interface texts.
[[nodiscard]] std::string day_in_words(const catalog::Texts& texts, Day day);

}  // namespace rehale::screens
