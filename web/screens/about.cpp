// What this is and is not, when to get help, what it keeps. Reached by the same corner everywhere.
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

// "about/<part>/1", "about/<part>/2"… as many as there are.
std::vector<std::string> lines_of(const App& app, const std::string& part) {
  std::vector<std::string> lines;
  for (int n = 1;; ++n) {
    const std::string& line = app.say("about/" + part + "/" + std::to_string(n));
    if (line.empty()) return lines;
    lines.push_back(line);
  }
}

void draw_part(App& app, const std::string& part) {
  kit::heading(*app.ui, part + "-title", app.say("about/" + part + "/title"),
               kit::Heading::section);
  kit::bullets(*app.ui, part, lines_of(app, part));
}

// The cautions of the family picked, once it is read.
void draw_family_cautions(App& app) {
  std::vector<std::string> lines;
  for (int n = 1; !app.tell("cautions/" + std::to_string(n)).empty(); ++n) {
    lines.push_back(app.tell("cautions/" + std::to_string(n)));
  }
  if (lines.empty()) return;
  kit::heading(*app.ui, "family-title", app.tell("name"), kit::Heading::section);
  kit::bullets(*app.ui, "family", lines);
}

// On a shared device a count stays, and closing the page is not the person's to do.
void draw_private(App& app) {
  if (!app.kiosk.on) return draw_part(app, "private");
  kit::heading(*app.ui, "private-title", app.say("about/private/title"), kit::Heading::section);
  kit::paragraph(*app.ui, "private", app.say("kiosk/private"));
}

// Told by the page once all its files are kept (web/js/offline.js).
void draw_version(App& app) {
  const std::string offline = shell::launch_option(shell::k_option_offline);
  if (offline == "yes") kit::paragraph(*app.ui, "offline", app.say("about/offline"));
  if (offline == "file") kit::paragraph(*app.ui, "offline", app.say("about/one-file"));
  kit::caption(
      *app.ui, "version",
      kit::fill(app.say("about/version"), {{"id", shell::launch_option(shell::k_option_build)}}));
}

}  // namespace

void draw_about(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "about", .title = app.say("about/title"), .back = true});
  kit::heading(ui, "title", app.say("about/title"));
  kit::begin_card(ui, {.id = "danger", .tone = kit::Tone::caution});
  kit::heading(ui, "danger-title", app.say("about/danger/title"), kit::Heading::section);
  kit::bullets(ui, "danger-list", lines_of(app, "danger"));
  kit::end_card(ui);
  draw_part(app, "what");
  draw_part(app, "limits");
  draw_part(app, "safe");
  draw_family_cautions(app);
  draw_private(app);
  draw_version(app);
  // Not in the middle of a check: it would be lost. Not from a shared device: they lead away.
  const bool free = !app.session.running() && !app.kiosk.on;
  const bool desk = free && kit::text_button(ui, {.id = "desk", .label = app.say("desk/enter")});
  if (free && shell::launch_option(shell::k_option_offline) != "file") {
    kit::text_link(ui,
                   {.id = "licences", .label = app.say("about/licences"), .href = "licences.txt"});
  }
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "close", .label = app.say("about/close")}, .quiet = {}});
  if (desk) return app.to_desk();
  const bool leave = pressed == kit::ActionPress::main || top == kit::TopPress::back;
  if (leave) app.where = app.before_about;
}

}  // namespace rehale::screens
