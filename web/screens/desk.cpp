// The educator's desk: what it is, and its entries. Nothing here leaves the device.
#include "web/screens/screens.h"

namespace rehale::screens {

void App::to_desk() {
  if (session.running()) return;
  where = Where::desk;
}

void App::load_families(const std::function<void()>& then) {
  for (const catalog::Id& family : content.library().families) {
    if (content.family(family) != nullptr) continue;
    return content.load_family(family, [this, then](const Troubles& troubles) {
      if (troubles.empty()) return load_families(then);
      show_trouble("trouble/content", troubles);
      trouble.can_go_on = true;
      trouble.back = Where::desk;
    });
  }
  then();
}

void draw_desk(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "desk", .title = app.say("desk/title"), .back = true});
  kit::heading(ui, "title", app.say("desk/title"));
  kit::paragraph(ui, "lead", app.say("desk/lead"));
  kit::notice(ui, "honest", app.say("desk/honest"));
  const bool set = kit::quiet_button(ui, {.id = "set", .label = app.say("set/title")});
  const bool read = kit::main_button(ui, {.id = "read", .label = app.say("desk/read")});
  kit::bullets(ui, "limits", {app.say("desk/private"), app.say("desk/care")});
  const auto pressed =
      kit::end_screen(ui, {.main = {}, .quiet = {.id = "leave", .label = app.say("desk/leave")}});
  if (top == kit::TopPress::help) return app.to_about();
  if (set) return app.to_set_practice();
  if (read) app.where = Where::desk_read;
  if (pressed == kit::ActionPress::quiet || top == kit::TopPress::back) app.to_choose();
}

}  // namespace rehale::screens
