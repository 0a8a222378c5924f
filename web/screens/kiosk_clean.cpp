// A minute in which the screen of a shared device takes no touch, to be wiped.
#include <algorithm>
#include <cmath>

#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

void draw_kiosk_clean(App& app) {
  kit::Ui& ui = *app.ui;
  const double left_ms = app.kiosk.clean_until_ms - ui.now_ms();
  const int left_s = std::max(0, static_cast<int>(std::ceil(left_ms / 1000)));
  kit::begin_screen(ui, {.id = "kiosk-clean",
                         .title = app.say("kiosk/clean-title"),
                         .top_buttons = false,
                         .help = false});
  kit::heading(ui, "title", app.say("kiosk/clean-title"));
  kit::paragraph(ui, "lead", app.say("kiosk/clean-lead"));
  kit::paragraph(ui, "left",
                 kit::fill(app.say("kiosk/clean-left"), {{"seconds", std::to_string(left_s)}}));
  kit::end_screen(ui);
  if (left_ms <= 0) return app.end_kiosk_visit();
  shell::redraw_at(ui.now_ms() + left_ms - (left_s - 1) * 1000.0);
}

}  // namespace rehale::screens
