// The app's settings: what was kept from before, the language, and keeping them when the person
// agreed.
#include "web/screens/app.h"
#include "web/screens/asked.h"
#include "web/screens/kept_settings.h"
#include "web/shell/host.h"

namespace rehale::screens {

void App::take_kept_settings() {
  system_language_ = shell::preferences().language;
  kiosk.on = !shell::launch_option(shell::k_option_kiosk).empty();
  ui->set_shared(kiosk.on);
  const std::string text =
      shell::launch_option(kiosk.on ? shell::k_option_kiosk_settings : shell::k_option_settings);
  const auto kept = read_settings(text);
  if (!kept) return;
  kept_settings_ = text;
  chosen_language_ = kept->language;
  ui->set_look(kept->look);
  ui->set_remembered(!kiosk.on);
}

// The link's wish, the person's, the set practice's, the system's.
std::string App::first_language() const {
  std::string asked = shell::launch_option("lang");
  if (!asked.empty()) return asked;
  if (!chosen_language_.empty()) return chosen_language_;
  asked = asked_language();
  return asked.empty() ? system_language_ : asked;
}

void App::pick_language(const std::string& language) { use_language(language, true); }

void App::use_language(const std::string& language, bool picked) {
  content.load_language(language, picked_, [this, language, picked](const Troubles& troubles) {
    if (!troubles.empty()) {
      const Where back = where;
      show_trouble("trouble/language", troubles);
      trouble.can_go_on = true;
      trouble.back = back;
      return;
    }
    if (picked) chosen_language_ = language;
    show_words();
    // The desk names techniques of every family at once.
    if (!desk.intake.records().empty()) load_families([] { shell::redraw(); });
    shell::redraw();
  });
}

void App::follow_settings() {
  if (const std::string asked = ui->take_asked_language(); !asked.empty()) pick_language(asked);
  const std::string system = shell::preferences().language;
  if (system != system_language_ && where != Where::loading) {
    system_language_ = system;
    const bool follows = chosen_language_.empty() && shell::launch_option("lang").empty() &&
                         asked_language().empty();
    std::string wanted = content.best_language(system);
    if (wanted.empty()) wanted = "en";
    if (follows && wanted != content.language()) use_language(wanted, false);
  }
  keep_settings();
}

// Written when something changes, and taken away when the person agrees no more.
void App::keep_settings() {
  if (kiosk.on) return;  // the next person begins as staff set it up
  const std::string text =
      ui->remembered() ? write_settings({ui->look(), chosen_language_}) : std::string();
  if (text == kept_settings_) return;
  kept_settings_ = text;
  shell::ask_page(shell::k_ask_keep, "settings\n" + text, [this](const Result<std::string>& done) {
    if (done || !ui->remembered()) return;
    kept_settings_.clear();
    ui->tell_not_kept();
  });
}

}  // namespace rehale::screens
