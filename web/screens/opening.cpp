// What the app opens with, by its address: a device, a result, a practice that was set, the screen
// to set one, the educator's desk; else the first screen.
#include <algorithm>

#include "web/screens/asked.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

// Digits only, below 2^64; anything else is no seed.
std::optional<std::uint64_t> parse_seed(const std::string& text) {
  std::uint64_t seed = 0;
  if (text.empty() || text.size() > 19) return std::nullopt;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    seed = seed * 10 + static_cast<std::uint64_t>(c - '0');
  }
  return seed;
}

}  // namespace

std::optional<std::uint64_t> seed_in_address() { return parse_seed(shell::launch_option("seed")); }

void App::open_first_screen() {
  where = Where::choose;
  if (!shell::launch_option("seed").empty() && !seed_in_address()) {
    trouble = {"trouble/seed", "", {}, true};
    where = Where::trouble;
    return content.fetch_scenes();
  }
  if (open_what_was_asked()) return content.fetch_scenes();
  // Picked before the app was there: its files come first, then the pictures.
  const catalog::Id early = shell::launch_option("family");
  const auto& families = content.library().families;
  if (std::find(families.begin(), families.end(), early) != families.end()) {
    pick_family(early);
  } else {
    content.fetch_scenes();
  }
}

// By a part of the address after '#'; true: there was one.
bool App::open_what_was_asked() {
  const auto asked_for = [](std::string_view what) { return shell::launch_option(what); };
  if (kiosk.on) {
    to_kiosk();
  } else if (const auto code = asked_for(shell::k_option_code); !code.empty()) {
    open_handed(code);
  } else if (const auto link = asked_for(shell::k_option_asked); !link.empty()) {
    open_asked(link);
  } else if (const auto sealed = asked_for(shell::k_option_sealed); !sealed.empty()) {
    open_sealed(sealed);
  } else if (const auto numbers = asked_for(shell::k_option_care); !numbers.empty()) {
    open_care_link(numbers);
  } else if (!asked_for(shell::k_option_set).empty()) {
    to_set_practice();
  } else if (!asked_for(shell::k_option_desk).empty()) {
    to_desk();
  } else {
    return false;
  }
  return true;
}

}  // namespace rehale::screens
