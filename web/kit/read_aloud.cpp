#include "web/kit/read_aloud.h"

#include <string>
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

std::string reading_wish(const Ui& ui) {
  constexpr const char* k_loudness[] = {"", "medium", "quiet"};  // in the order of Look::Loudness
  std::string wish = ui.look().read_slowly ? "slowly" : "";
  const std::string loudness = k_loudness[static_cast<std::size_t>(ui.look().loudness)];
  if (!wish.empty() && !loudness.empty()) wish += ' ';
  return wish + loudness;
}

void start_or_stop_reading(Ui& ui) {
  const std::string wish = is_reading(ui) ? "stop" : reading_wish(ui);
  shell::ask_page(shell::k_ask_read, wish, [](const Result<std::string>&) {});
}

}  // namespace rehale::kit
