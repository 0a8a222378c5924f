// Steps to and from the screens about the inhaler in the person's hand: its numbers are fetched,
// come back from a link, a file or this device, and are kept if the person agreed.
#include <algorithm>

#include "core/exchange/envelope.h"
#include "web/screens/care_parts.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

// The first code of that kind in the text of a file; nothing: none that can be read.
std::optional<exchange::CareState> care_in(const std::string& text) {
  for (const auto& found : exchange::find_codes(text)) {
    if (found.kind != exchange::Kind::care) continue;
    if (auto state = exchange::read_care(found.code)) return *std::move(state);
  }
  return {};
}

}  // namespace

std::string App::care_code() const {
  return care.known ? exchange::write_care(care.told).value_or("") : std::string();
}

// With the family's numbers there: shows what was told before, or asks.
void App::open_care(Where back) {
  care.back = back;
  care.message.clear();
  if (care.told.family != picked_)
    care = {.told = fresh_care(*content.care(picked_), shell::today()), .back = back};
  const auto* kept = exchange::care_of(history.kept, picked_);
  if (!care.known && kept != nullptr) take_back(care, *kept, shell::today());
  where = care.known ? Where::care_plan : Where::care;
}

void App::to_care() {
  const Where back = where;
  where = Where::loading;
  look_at_kept([this, back] {
    content.load_care(picked_, [this, back](const Troubles& troubles) {
      if (troubles.empty()) {
        open_care(back);
      } else {
        show_trouble("trouble/content", troubles);
        trouble.can_go_on = true;
        trouble.back = back;
      }
      shell::redraw();
    });
  });
}

void App::show_care_plan() {
  care.known = true;
  care.message.clear();
  care.told.counted = shell::today();
  where = Where::care_plan;
  if (history.state != History::State::agreed) return;
  exchange::keep_care(history.kept, care.told);
  write_kept();
}

void App::open_care_file() {
  care.message.clear();
  shell::ask_page("open", "", [this](const Result<std::string>& text) {
    shell::redraw();
    if (where != Where::care) return;
    if (!text) care.message = "care/not-read";
    if (!text || text->empty()) return;
    const auto state = care_in(*text);
    if (!state || state->family != picked_) {
      care.message = state ? "care/open-other" : "care/open-none";
      return;
    }
    take_back(care, *state, shell::today());
    where = Where::care_plan;
  });
}

void App::open_care_link(const std::string& code) {
  const auto state = exchange::read_care(code);
  if (!state) return show_unread(state.error());
  const auto& families = content.library().families;
  if (std::ranges::find(families, state->family) == families.end())
    return show_link_trouble("trouble/link-other");
  pick_family(state->family, [this, state = *state] {
    take_back(care, state, shell::today());
    where = Where::ready;
    to_care();
  });
}

}  // namespace rehale::screens
