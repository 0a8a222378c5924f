// The whole app on the null host: the shipped content served from assets, an address with or
// without a code. Must not know what a test looks for.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "tests/web/kit_rig.h"
#include "web/screens/app.h"
#include "web/shell/host_null.h"

namespace rehale::rig {

inline constexpr Day k_day = 20782;  // 2026-11-25, Python's datetime

// What stands in the address behind '#': a code (k_option_code…), or "".
struct Address {
  std::string_view option = shell::k_option_code;
  std::string value;
};
void open_app(const Address& address = {}, Day today = k_day);
// The same, after `prepare` set what else the null host shall tell.
void open_with(const std::function<void()>& prepare, Day today = k_day);
[[nodiscard]] screens::App& app();

// Presses what has this role and name, and waits until the page rests. A failed test where there
// is no such thing.
void press(shell::Role role, const std::string& name);

// The name of what has this id; "" where there is no such thing.
std::string told(std::string_view id);

// The family under the content id that the page works out.
[[nodiscard]] std::shared_ptr<const check::Course> page_course(const std::string& family);

}  // namespace rehale::rig
