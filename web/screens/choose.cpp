// The first screen: which device do you hold?
#include "web/screens/pictures.h"
#include "web/screens/screens.h"

namespace rehale::screens {

void draw_choose(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top = kit::begin_screen(
      ui, {.id = "choose-device", .title = app.say("choose/title"), .back = app.kiosk.on});
  kit::heading(ui, "title", app.say("choose/ask"));
  kit::paragraph(ui, "lead", app.say("choose/lead"), kit::Ink::soft);
  kit::CardGrid grid{"devices", app.say("choose/ask"), {}};
  for (const catalog::Id& family : app.content.library().families) {
    grid.cards.push_back({family, app.say("families/" + family + "/name"),
                          app.say("families/" + family + "/tell"),
                          scene_picture(app, family, {"open"})});
  }
  const int picked = kit::card_grid(ui, grid);
  if (kit::quiet_button(ui, {.id = "unknown", .label = app.say("choose/unknown")})) {
    app.finder_path = {0};
    app.found.reset();
    app.where = Where::finder;
  }
  for (const catalog::Id& language : app.content.library().languages) {
    if (language == app.content.language()) continue;
    if (kit::quiet_button(ui, {.id = "language-" + language,
                               .label = app.say("languages/" + language),
                               .language = language}))
      app.pick_language(language);
  }
  kit::notice(ui, "danger", app.say("choose/danger"));
  kit::caption(ui, "limits", app.say("choose/limits"));
  kit::end_screen(ui);
  if (top == kit::TopPress::help) app.to_about();
  if (top == kit::TopPress::back) app.end_kiosk_visit();
  if (picked >= 0) app.pick_family(grid.cards[static_cast<std::size_t>(picked)].id);
}

}  // namespace rehale::screens
