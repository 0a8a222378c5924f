// The start of a shared device: what it is for, one large button; languages; for staff.
#include "web/kit/read_aloud.h"
#include "web/screens/pictures.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

constexpr double k_each_ms = 12'000, k_opens_after_ms = 2'000;

// One device after another opens, in 300 ms each; nothing flashes. On request, and for people who
// asked their system for calm, the first one stands open.
kit::DrawPicture draw_devices(App& app) {
  const auto& families = app.content.library().families;
  const bool still = app.kiosk.still || app.ui->reduced_motion();
  if (still) return moving_picture(app, families.front(), {"open"});
  const double now_ms = app.ui->now_ms();
  const auto turn = static_cast<std::size_t>(now_ms / k_each_ms);
  const double since_ms = now_ms - static_cast<double>(turn) * k_each_ms;
  const bool open = since_ms >= k_opens_after_ms;
  shell::redraw_at(now_ms + (open ? k_each_ms : k_opens_after_ms) - since_ms);
  const std::vector<catalog::Id> pose =
      open ? std::vector<catalog::Id>{"open"} : std::vector<catalog::Id>{};
  return moving_picture(app, families[turn % families.size()], pose);
}

// Speaks with the device's own voice, if it has one for this language.
void draw_aloud(App& app) {
  kit::Ui& ui = *app.ui;
  if (!kit::can_read_aloud(ui)) return;
  bool& on = app.kiosk.reads_aloud;
  const bool was = on;
  on = kit::toggle_button(ui, {.id = "aloud", .label = app.say("kiosk/aloud")}, was);
  if (on) kit::paragraph(ui, "aloud-how", app.say("kiosk/aloud-how"));
  if (on != was) shell::redraw();  // the page is told before the next one
}

void draw_languages(App& app) {
  for (const catalog::Id& language : app.content.library().languages) {
    if (language == app.content.language()) continue;
    if (kit::quiet_button(*app.ui, {.id = "language-" + language,
                                    .label = app.say("languages/" + language),
                                    .language = language}))
      app.pick_language(language);
  }
}

}  // namespace

void draw_kiosk(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top = kit::begin_screen(ui, {.id = "kiosk", .title = app.say("kiosk/title")});
  kit::picture(
      ui, {.id = "picture", .alternative = app.say("kiosk/picture"), .draw = draw_devices(app)});
  kit::heading(ui, "title", app.say("kiosk/ask"));
  kit::paragraph(ui, "lead", app.say("kiosk/lead"));
  kit::paragraph(ui, "private", app.say("kiosk/private"), kit::Ink::soft);
  draw_languages(app);
  draw_aloud(app);
  if (!ui.reduced_motion()) {
    app.kiosk.still =
        kit::toggle_button(ui, {.id = "still", .label = app.say("kiosk/still")}, app.kiosk.still);
  }
  const bool staff = kit::text_button(ui, {.id = "staff", .label = app.say("kiosk/staff")});
  kit::caption(ui, "limits", app.say("choose/limits"));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "go", .label = app.say("kiosk/start")}, .quiet = {}});
  if (staff) return ask_staff(app);
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::main) app.where = Where::choose;
}

}  // namespace rehale::screens
