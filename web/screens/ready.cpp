// Before the check: what comes, how long it takes, and that there is nothing to fear.
#include "web/screens/asked.h"
#include "web/screens/pictures.h"
#include "web/screens/screens.h"

namespace rehale::screens {

void draw_loading(App& app) {
  kit::begin_screen(*app.ui, {.id = "loading", .title = "Rehale", .top_buttons = false});
  kit::heading(*app.ui, "title", "Rehale");
  const std::string& words = app.say("loading");
  kit::skeleton(*app.ui, "wait", words.empty() ? "One moment, please." : words);
  kit::end_screen(*app.ui);
}

void draw_ready(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "ready", .title = app.say("ready/title"), .back = true});
  kit::picture(ui, {.id = "picture",
                    .alternative = app.tell("tell"),
                    .draw = moving_picture(app, app.picked(), {"open"})});
  kit::heading(ui, "title", app.tell("name"));
  draw_asked_facts(app);
  kit::paragraph(ui, "lead", app.say("ready/lead"));
  kit::bullets(ui, "how", {how_many(app), app.say("ready/honest"), app.say("ready/empty-hands")});
  const bool asks_where = kit::text_button(ui, {.id = "where", .label = app.say("where/see")});
  const bool asks_care =
      !app.kiosk.on && kit::text_button(ui, {.id = "care", .label = app.say("care/ask")});
  kit::Actions actions{.main = {.id = "go", .label = app.say("ready/start")}, .quiet = {}};
  if (!app.rehearsed_family().run_through.steps.empty())
    actions.quiet = {.id = "run", .label = app.say("run/enter")};
  const auto pressed = kit::end_screen(ui, actions);
  if (asks_where) return app.to_where_it_goes();
  if (asks_care) return app.to_care();
  if (top == kit::TopPress::help) app.to_about();
  if (top == kit::TopPress::back) app.to_choose();
  if (pressed == kit::ActionPress::main) app.begin_run();
  if (pressed == kit::ActionPress::quiet) app.to_run_through();
}

}  // namespace rehale::screens
