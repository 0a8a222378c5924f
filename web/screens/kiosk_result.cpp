// Between the last answer and the result on a shared device: the room may look on.
#include "web/screens/screens.h"

namespace rehale::screens {

void draw_kiosk_result(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "kiosk-result", .title = app.say("kiosk/result-title")});
  kit::heading(ui, "title", app.say("kiosk/result-title"));
  kit::paragraph(ui, "lead", app.say("kiosk/result-lead"));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "show", .label = app.say("kiosk/show")},
                           .quiet = {.id = "done", .label = app.say("kiosk/unseen")}});
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::main) app.where = Where::result;
  if (pressed == kit::ActionPress::quiet) app.end_kiosk_visit();
}

}  // namespace rehale::screens
