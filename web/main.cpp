// The page's table of contents: one app, its words to the shell. Nothing else.

#include <string>

#include "web/kit/ui.h"
#include "web/screens/app.h"
#include "web/shell/app.h"
#include "web/shell/host.h"

namespace {

using namespace rehale;

kit::Ui& ui() {
  static kit::Ui the_ui;
  return the_ui;
}

screens::App& app() {
  static screens::App the_app;
  return the_app;
}

void start() {
  const shell::Fonts fonts = shell::take_fonts();
  if (!ui().load_fonts(fonts.regular, fonts.bold)) {
    shell::show_error_panel("A part of this page did not arrive.",
                            "The letters could not be read. Please load the page again.");
    return;
  }
  app().ui = &ui();
  app().start();
}

void frame() {
  if (app().waits_unseen()) return;
  ui().begin_frame();
  app().frame();
  ui().end_frame();
}

}  // namespace

int main() {
  shell::run({.start = start,
              .frame = frame,
              .export_run = [] { return app().export_run(); },
              .content_id = [] { return app().session.content(); }});
  return 0;
}
