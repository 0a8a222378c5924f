// One result of the desk: what to teach again first and why, every technique with its chance in
// words, what was never asked about, answers that differ, and what changed since the check before.
#include <algorithm>

#include "core/exchange/fhir.h"
#include "web/screens/desk_words.h"
#include "web/screens/mend_words.h"
#include "web/screens/screens.h"
#include "web/screens/sheet.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using cohort::Told;

const cohort::Record& record_of(const App& app) {
  return app.desk.intake.records()[app.desk.open_record];
}

std::string name_of(const App& app, int technique) {
  return technique_name(app, app.session.family(), static_cast<std::size_t>(technique));
}

void draw_mend(App& app, int n) {
  kit::Ui& ui = *app.ui;
  const advice::ToMend& item = app.session.advice().to_mend[static_cast<std::size_t>(n)];
  const auto& technique = record_of(app).techniques[static_cast<std::size_t>(item.technique)];
  const std::string id = "mend-" + std::to_string(n + 1);
  kit::begin_card(
      ui, {.id = id,
           .tone = kit::Tone::to_mend,
           .label = kit::fill(app.say("desk/again-place"), {{"place", std::to_string(n + 1)}})});
  kit::heading(ui, id + "-name", name_of(app, item.technique), kit::Heading::section);
  kit::paragraph(
      ui, id + "-chance",
      kit::fill(app.say("desk/chance/said"), {{"chance", chance_words(app, technique)}}) + ' ' +
          app.say(item.shown ? "desk/shown-by" : "desk/worked-out"));
  if (item.misconception >= 0) {
    kit::paragraph(ui, id + "-rule",
                   kit::fill(app.say("desk/rule"), {{"rule", mend_words(app, n, "name")}}));
  }
  kit::paragraph(ui, id + "-why",
                 kit::fill(app.say("desk/tell-why"), {{"words", mend_words(app, n, "reason")}}));
  kit::paragraph(ui, id + "-how",
                 kit::fill(app.say("desk/tell-how"), {{"words", mend_words(app, n, "remedy")}}));
  kit::end_card(ui);
}

void draw_to_mend(App& app) {
  const auto& items = app.session.advice().to_mend;
  const int shown = std::min(static_cast<int>(items.size()), advice::k_at_a_time);
  kit::heading(*app.ui, "mend-title", app.say("desk/teach-first"), kit::Heading::section);
  if (shown == 0) kit::paragraph(*app.ui, "mend-none", app.say("desk/nothing-to-teach"));
  for (int n = 0; n < shown; ++n) draw_mend(app, n);
}

void draw_list(App& app, const char* id, const char* title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  kit::heading(*app.ui, std::string(id) + "-title", app.say(title), kit::Heading::section);
  kit::bullets(*app.ui, id, lines);
}

void draw_techniques(App& app) {
  std::vector<std::string> asked, never;
  const cohort::Record& record = record_of(app);
  for (std::size_t k = 0; k < record.techniques.size(); ++k) {
    const std::string name = technique_name(app, app.session.family(), k);
    if (record.techniques[k].told == Told::unprobed) never.push_back(name);
    else asked.push_back(name + ": " + chance_words(app, record.techniques[k]));
  }
  draw_list(app, "all", "desk/all-techniques", asked);
  kit::caption(*app.ui, "chance-how", app.say("desk/chance/how"));
  draw_list(app, "never", "desk/never", never);
}

void draw_differing(App& app) {
  std::vector<std::string> lines;
  for (const auto& item : app.session.advice().differing)
    lines.push_back(name_of(app, item.technique));
  draw_list(app, "differ", "desk/differing", lines);
}

// Only beyond noise: overall by two techniques or more, each told both times.
void draw_change(App& app) {
  const auto before = app.desk.before(app.desk.open_record);
  if (!before) return;
  kit::Ui& ui = *app.ui;
  const cohort::Record& was = app.desk.intake.records()[*before];
  const auto all = cohort::changes(was, record_of(app));
  const auto overall = cohort::overall(all);
  kit::heading(ui, "change-title", app.say("desk/change/title"), kit::Heading::section);
  const char* path = overall == cohort::Change::gained ? "desk/change/gained"
                     : overall == cohort::Change::lost ? "desk/change/lost"
                                                       : "desk/change/none";
  kit::paragraph(ui, "change", kit::fill(app.say(path), {{"date", day_words(app, was.day)}}));
  if (overall == cohort::Change::none) return;
  std::vector<std::string> lines;
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (all[k] == cohort::Change::none) continue;
    lines.push_back(kit::fill(
        app.say(all[k] == cohort::Change::gained ? "desk/change/now-has" : "desk/change/now-lacks"),
        {{"name", name_of(app, static_cast<int>(k))}}));
  }
  kit::bullets(ui, "change-list", lines);
}

void save_fhir(App& app) {
  const auto read = exchange::read_result(app.desk.intake.code(app.desk.open_record));
  const auto* family = app.content.family(app.session.family_id());
  if (!read || family == nullptr) return;
  const auto bundle = exchange::write_fhir(app.session.run(), read->head, family->texts,
                                           {app.say("desk/title") + ": " + app.tell("name"),
                                            app.say("desk/origin"), app.say("question/unsure")},
                                           exchange::run_key(*read));
  if (bundle)
    return save_from_desk(app, "rehale-" + result_number(record_of(app)) + ".fhir.json", *bundle);
  app.desk.told = "hand/not-done";
}

void print_person(App& app) {
  shell::ask_page("print", write_sheet(app), [&app](const Result<std::string>& answer) {
    app.desk.told = answer ? "hand/printed" : "hand/not-done";
    app.ui->say(app.say(app.desk.told));
    shell::redraw();
  });
}

}  // namespace

bool App::open_desk_person(std::size_t record) {
  const std::string& code = desk.intake.code(record);
  const auto result = exchange::read_result(code);
  const auto course = desk.intake.course(desk.intake.records()[record].family);
  if (!result || !course) return false;
  const auto log = exchange::log_of(*result, course->family, course->content);
  if (!log || !session.adopt(course, *log)) return false;
  desk.open_record = record;
  picked_ = course->family.id;
  handed = result->head;
  hand_over = {};
  hand_over.code = code;
  hand_over.link = shell::launch_option(shell::k_option_address) + "#r=" + code;
  hand_over.day = result->head.day;
  where = Where::desk_person;
  return true;
}

void App::leave_desk_person() {
  session.clear();
  handed.reset();
  hand_over = {};
  desk.told.clear();
  where = Where::desk_people;
}

void draw_desk_person(App& app) {
  kit::Ui& ui = *app.ui;
  const cohort::Record& record = record_of(app);
  const auto top = kit::begin_screen(ui, {.id = "desk-person",
                                          .visit = std::to_string(app.desk.open_record),
                                          .title = app.say("desk/one"),
                                          .back = true});
  kit::heading(ui, "title", family_name(app, record.family));
  kit::paragraph(ui, "facts", result_words(app, record));
  kit::notice(ui, "origin", app.say("desk/origin"));
  if (record.made_up) kit::notice(ui, "made-up", app.say("hand/made-up"));
  draw_change(app);
  draw_to_mend(app);
  draw_techniques(app);
  draw_differing(app);
  if (kit::quiet_button(ui, {.id = "fhir", .label = app.say("desk/fhir")})) save_fhir(app);
  if (!app.desk.told.empty()) kit::paragraph(ui, "told", app.say(app.desk.told));
  kit::caption(ui, "care", app.say("desk/care"));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "print", .label = app.say("hand/print")},
                           .quiet = {.id = "list", .label = app.say("desk/to-list")}});
  if (pressed == kit::ActionPress::main) print_person(app);
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::quiet || top == kit::TopPress::back) app.leave_desk_person();
}

}  // namespace rehale::screens
