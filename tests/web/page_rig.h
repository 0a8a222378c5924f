// The app opened on the null host as a link to the numbers of an inhaler, to a result, or a first
// tap would. Must not know what a test looks for.
#pragma once

#include <string>

#include "tests/web/app_rig.h"

namespace rehale::rig {

struct Opening {
  std::string care, result, family, language = "en", kept;
  bool no_storage = false;
  Day today = k_day;
};

// A fresh page; what was open before is gone.
void open_page(const Opening& opening);

void press_id(const std::string& id);
void type(const std::string& id, double number);

[[nodiscard]] std::string all_told();

}  // namespace rehale::rig
