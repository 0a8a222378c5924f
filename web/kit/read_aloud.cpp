#include "web/kit/read_aloud.h"

#include <string_view>

#include "web/kit/state.h"

namespace rehale::kit {

bool can_read_aloud(const Ui& ui) {
  const State& s = ui.state();
  const std::string_view wanted = std::string_view(s.language).substr(0, s.language.find('-'));
  std::string_view left = s.voice.languages;
  while (!left.empty() && !wanted.empty()) {
    const auto space = left.find(' ');
    if (left.substr(0, space) == wanted) return true;
    if (space == left.npos) break;
    left.remove_prefix(space + 1);
  }
  return false;
}

bool is_reading(const Ui& ui) { return ui.state().voice.speaking; }

void start_or_stop_reading(Ui& ui) {
  const char* wish = is_reading(ui) ? "stop" : ui.look().read_slowly ? "slowly" : "";
  shell::ask_page(shell::k_ask_read, wish, [](const Result<std::string>&) {});
}

}  // namespace rehale::kit
