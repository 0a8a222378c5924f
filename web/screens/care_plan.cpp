// The days that follow from what the person told of their inhaler, each with its reason; and ways
// to carry the numbers, since browsers forget.
#include "web/screens/care_words.h"
#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void ask_and_tell(App& app, const char* service, const std::string& words, const char* done) {
  shell::ask_page(service, words, [&app, done](const Result<std::string>& answer) {
    app.care.message = answer ? done : "care/not-done";
    shell::redraw();
  });
}

void draw_card(App& app, const CareCard& card) {
  kit::Ui& ui = *app.ui;
  kit::begin_card(ui,
                  {.id = card.id, .tone = card.caution ? kit::Tone::caution : kit::Tone::plain});
  if (!card.title.empty()) kit::heading(ui, card.id + "-title", card.title, kit::Heading::section);
  for (std::size_t n = 0; n < card.lines.size(); ++n)
    kit::paragraph(ui, card.id + '-' + std::to_string(n + 1), card.lines[n]);
  kit::end_card(ui);
}

// What came back from an earlier day, until the counter is looked at again.
void draw_came_back(App& app, Day today) {
  const Care& care = app.care;
  if (!care.before || care.recounted) return;
  const bool needed = a_day(*care.before) == 0;
  kit::notice(*app.ui, "came-back",
              kit::fill(app.say(needed ? "care/came-back-needed" : "care/came-back"),
                        {{"date", date_words(app.content.texts(), care.before->counted)},
                         {"left", std::to_string(care.before->left)},
                         {"expected", std::to_string(by_plan(*care.before, today))}}));
}

void draw_grounds(App& app) {
  kit::Ui& ui = *app.ui;
  Care& care = app.care;
  kit::paragraph(ui, "leaflet",
                 app.say(leaflet_differs(app) ? "care/leaflet-used" : "care/leaflet-wins"));
  care.sources_open =
      kit::disclosure(ui, {.id = "sources", .label = app.say("care/sources")}, care.sources_open);
  if (care.sources_open) kit::bullets(ui, "sources-list", source_lines(app));
  if (!has_can(*app.content.care(app.picked()))) return;
  care.ways_open =
      kit::disclosure(ui, {.id = "ways", .label = app.say("care/ways")}, care.ways_open);
  if (!care.ways_open) return;
  kit::paragraph(ui, "ways-lead", app.say("care/ways-lead"));
  kit::bullets(ui, "ways-list", refused_lines(app));
}

void draw_carrying(App& app, Day today) {
  kit::Ui& ui = *app.ui;
  if (kit::quiet_button(ui, {.id = "calendar", .label = app.say("care/calendar")}))
    save_calendar(care_reminders(app, today), app.care.message);
  if (kit::quiet_button(ui, {.id = "link", .label = app.say("care/link")})) {
    ask_and_tell(app, "copy",
                 shell::launch_option(shell::k_option_address) + "#c=" + app.care_code(),
                 "care/copied");
  }
  if (kit::quiet_button(ui, {.id = "save", .label = app.say("care/save")})) {
    ask_and_tell(app, "save", "rehale-inhaler.json\n" + exchange::care_file(app.care_code()),
                 "care/saved");
  }
  if (!app.care.message.empty()) kit::status_line(ui, "message", app.say(app.care.message));
  kit::caption(ui, "carry", app.say("care/carry"));
}

}  // namespace

void draw_care_plan(App& app) {
  kit::Ui& ui = *app.ui;
  const Day today = shell::today();
  const auto top =
      kit::begin_screen(ui, {.id = "care-plan", .title = app.say("care/plan-title"), .back = true});
  kit::heading(ui, "title", app.say("care/plan-title"));
  draw_came_back(app, today);
  const auto cards = care_cards(app, today);
  if (cards.empty()) kit::notice(ui, "amiss", app.say("care/amiss"));
  for (const CareCard& card : cards) draw_card(app, card);
  draw_grounds(app);
  draw_carrying(app, today);
  kit::caption(ui, "limits", app.say("care/limits"));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "done", .label = app.say("care/done")},
                           .quiet = {.id = "change", .label = app.say("care/change")}});
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::quiet) {
    app.care.message.clear();
    app.where = Where::care;
  }
  if (pressed == kit::ActionPress::main || top == kit::TopPress::back) app.where = app.care.back;
}

}  // namespace rehale::screens
