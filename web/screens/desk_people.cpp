// Results one by one: a list in pages, the most to teach again first, or the newest first. A list
// for a teacher, no ranking by health.
#include <algorithm>

#include "web/screens/desk_words.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

std::string row_words(const App& app, const cohort::Record& record) {
  const auto lacking =
      std::ranges::count(record.techniques, cohort::Told::not_yet, &cohort::Technique::told);
  return kit::fill(app.say("desk/row"), {{"family", family_name(app, record.family)},
                                         {"result", result_words(app, record)},
                                         {"count", std::to_string(lacking)}});
}

// The record pressed, if any.
std::optional<std::size_t> draw_page(App& app) {
  const Desk& desk = app.desk;
  std::optional<std::size_t> pressed;
  const std::size_t from = desk.page * k_people_a_page;
  const std::size_t to = std::min(desk.people().size(), from + k_people_a_page);
  for (std::size_t n = from; n < to; ++n) {
    const std::size_t record = desk.people()[n];
    if (kit::quiet_button(*app.ui, {.id = "result-" + std::to_string(n - from),
                                    .label = row_words(app, desk.intake.records()[record])}))
      pressed = record;
  }
  return pressed;
}

void draw_turning(App& app) {
  Desk& desk = app.desk;
  const std::size_t count = desk.people().size();
  const bool back =
      desk.page > 0 &&
      kit::quiet_button(*app.ui, {.id = "before", .label = app.say("desk/page-back")});
  const bool on = (desk.page + 1) * k_people_a_page < count &&
                  kit::quiet_button(*app.ui, {.id = "next", .label = app.say("desk/page-on")});
  if (on) ++desk.page;
  if (back) --desk.page;
}

}  // namespace

void draw_desk_people(App& app) {
  kit::Ui& ui = *app.ui;
  Desk& desk = app.desk;
  const auto top = kit::begin_screen(ui, {.id = "desk-people",
                                          .visit = "page " + std::to_string(desk.page),
                                          .title = app.say("desk/people"),
                                          .back = true});
  kit::heading(ui, "title", app.say("desk/people"));
  kit::caption(ui, "honest", app.say("desk/origin"));
  draw_desk_filter(app, {.families = true, .every_family = true, .sort = true});
  const std::size_t count = desk.people().size(), from = desk.page * k_people_a_page;
  kit::status_line(ui, "count",
                   kit::fill(app.say("desk/shown"),
                             {{"from", std::to_string(count == 0 ? 0 : from + 1)},
                              {"to", std::to_string(std::min(count, from + k_people_a_page))},
                              {"count", std::to_string(count)}}));
  if (desk.sort == DeskSort::see_first) kit::caption(ui, "order", app.say("desk/see-first-how"));
  if (!desk.told.empty()) kit::paragraph(ui, "told", app.say(desk.told));
  const auto pressed = draw_page(app);
  draw_turning(app);
  kit::end_screen(ui);
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) {
    app.where = Where::desk_read;
    desk.told.clear();
  }
  if (!pressed) return;
  desk.told = app.open_desk_person(*pressed) ? "" : "desk/not-whole";
}

}  // namespace rehale::screens
