// Something is not as it should be: what, where, and a way out. Never a blank page.
#include <algorithm>

#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

constexpr std::size_t k_most_shown = 12;

// Content may be what is broken, so these words are here as well.
const std::string& words(const App& app, const std::string& path, const std::string& otherwise) {
  const std::string& found = app.say(path);
  return found.empty() ? otherwise : found;
}

std::string line_of(const catalog::Finding& finding) {
  std::string line = finding.file;
  if (!finding.pointer.empty()) line += " " + finding.pointer;
  return line + ": " + finding.rule + ". " + finding.remedy;
}

}  // namespace

void draw_trouble(App& app) {
  static const std::string k_title = "This page is not complete";
  static const std::string k_lead =
      "A part of it could not be read. Your answers are safe with you. Please tell the people who "
      "run it.";
  static const std::string k_reload = "Try again";
  static const std::string k_go_on = "Go on";
  kit::Ui& ui = *app.ui;
  kit::begin_screen(ui, {.id = "trouble", .title = "Rehale", .help = false});
  kit::heading(ui, "title", words(app, app.trouble.title + "/title", k_title));
  kit::paragraph(
      ui, "lead",
      kit::fill(words(app, app.trouble.title + "/lead", k_lead), {{"date", app.trouble.detail}}));
  std::vector<std::string> lines;
  for (const auto& finding : app.trouble.findings) {
    if (lines.size() < k_most_shown) lines.push_back(line_of(finding));
  }
  if (!lines.empty()) kit::bullets(ui, "findings", lines);
  const bool go_on = app.trouble.can_go_on;
  const std::string& label =
      go_on ? words(app, "trouble/go-on", k_go_on) : words(app, "trouble/reload", k_reload);
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "way-out", .label = label}, .quiet = {}});
  if (pressed != kit::ActionPress::main) return;
  if (go_on && app.trouble.back != Where::choose) {
    app.where = app.trouble.back;
  } else if (go_on) {
    app.to_choose();
  } else {
    shell::reload();
  }
}

}  // namespace rehale::screens
