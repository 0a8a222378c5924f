// Sealed results at the educator's desk: the key file is picked and unlocked in the page, which
// opens seals a few at a time; the key is forgotten when all are through, or when the person stops
// it.
#include "web/screens/screens.h"
#include "web/screens/set_parts.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void forget_key() {
  shell::ask_page("lock", "", [](const Result<std::string>&) {});
}

void end(App& app) {
  app.desk.end_reading();
  forget_key();
}

void open_on(App& app) {
  const std::string lines = app.desk.lines_to_open();
  if (lines.empty()) return end(app);
  shell::ask_page("openSealed", lines,
                  [&app, heap = app.desk.heap()](const Result<std::string>& opened) {
                    if (heap != app.desk.heap()) return;  // stopped
                    if (opened) {
                      app.desk.take_opened(*opened);
                      open_on(app);
                    } else {
                      app.desk.told = "hand/not-done";
                      end(app);
                    }
                    shell::redraw(1, "desk opens");
                  });
}

}  // namespace

void draw_sealed(App& app) {
  kit::Ui& ui = *app.ui;
  if (app.desk.intake.sealed().empty()) return;
  if (!kit::main_button(ui, {.id = "unseal", .label = app.say("desk/unseal")})) return;
  shell::ask_page("unlock", passphrase_words(app, false), [&app](const Result<std::string>& key) {
    if (app.where == Where::desk_read && app.desk.work() == Desk::Work::none) {
      if (key && !key->empty()) {
        app.desk.begin_opening();
        open_on(app);
      } else {
        app.desk.told = key ? "" : "set/no-key";
        forget_key();
      }
    }
    shell::redraw();
  });
}

void stop_opening(App& app) { end(app); }

}  // namespace rehale::screens
