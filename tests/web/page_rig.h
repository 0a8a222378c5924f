// The whole app on the null host, with the shipped content: opened as a link or a first tap would.
#pragma once

#include <memory>
#include <string>

#include "core/base/civil.h"
#include "web/screens/app.h"

namespace rehale::rig {

inline constexpr Day k_day = day_of({2026, 11, 25});

struct Opening {
  std::string care, result, family, language = "en", kept;
  bool no_storage = false;
  Day today = k_day;
};

// A fresh page; what was open before is gone.
void open_page(const Opening& opening);
[[nodiscard]] screens::App& app();

void press_id(const std::string& id);
void type(const std::string& id, double number);

[[nodiscard]] std::string said(const std::string& id);  // "" when there is no such node
[[nodiscard]] std::string all_said();

}  // namespace rehale::rig
