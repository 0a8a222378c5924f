// When to check again and why, for the calendar; below it what changed since last time.
#include <algorithm>

#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

std::string why_words(const App& app) {
  const recheck::NextCheck& next = app.again.next;
  if (next.habit >= 0) {
    const auto& id = app.session.family().techniques[static_cast<std::size_t>(next.habit)].id;
    const bool fades = next.why == recheck::Why::fades;
    return kit::fill(app.say(fades ? "again/why/fades" : "again/why/not-yet"),
                     {{"step", app.tell("techniques/" + id + "/name")}});
  }
  const auto marks = advice::marks_of(app.content.library());
  if (!app.again.first)
    return kit::fill(app.say("again/why/later"), {{"months", std::to_string(marks.later_months)}});
  return kit::fill(app.say("again/why/first"), {{"weeks", std::to_string(marks.first_days / 7)}});
}

std::vector<exchange::Reminder> reminders(const App& app) {
  return {{.uid = "check-" + app.session.family_id() + "@rehale",
           .on = std::max<Day>(app.again.next.on, shell::today()),
           .title = app.say("again/check-title"),
           .note = why_words(app)}};
}

void draw_day(App& app) {
  kit::Ui& ui = *app.ui;
  const bool now = app.again.next.on <= shell::today();
  kit::begin_card(ui, {.id = "when"});
  kit::heading(ui, "when-title",
               now ? app.say("again/now")
                   : kit::fill(app.say("again/on"),
                               {{"date", date_words(app.content.texts(), app.again.next.on)}}),
               kit::Heading::section);
  kit::paragraph(ui, "why", why_words(app));
  kit::end_card(ui);
  kit::paragraph(ui, "sooner", app.say("again/sooner"));
  if (kit::quiet_button(ui, {.id = "calendar", .label = app.say("again/calendar")}))
    save_calendar(reminders(app), app.again.message);
  if (!app.again.message.empty()) kit::status_line(ui, "message", app.say(app.again.message));
  kit::caption(ui, "estimate", app.say("again/estimate"));
}

// Everything of this family that this device keeps, and the run on show.
std::vector<advice::Checked> checks_of(const App& app) {
  std::vector<advice::Checked> checks;
  const check::Course& course = app.session.run().course();
  const Day day = app.result_day();
  for (const auto& kept : app.history.kept.results) {
    if (app.handed) break;  // may be another person's
    if (kept.read.head.day > day || kept.read.begin.family != course.family.id) continue;
    if (exchange::run_key(kept.read) == app.history.key) continue;
    const auto log = exchange::log_of(kept.read, course.family, course.content);
    if (!log) continue;
    auto read = check::read_through(course, *log);
    if (read) checks.push_back({kept.read.head.day, *std::move(read)});
  }
  checks.push_back({day, {app.session.run().given(), app.session.run().verdict()}});
  return checks;
}

}  // namespace

void save_calendar(const std::vector<exchange::Reminder>& reminders, std::string& told) {
  const auto text = exchange::write_calendar(reminders, {.day = shell::today()});
  if (!text || reminders.empty()) {
    told = "care/not-done";
    return;
  }
  shell::ask_page("save", "rehale.ics\n" + *text, [&told](const Result<std::string>& answer) {
    told = answer ? "care/calendar-saved" : "care/not-done";
    shell::redraw();
  });
}

Day App::result_day() const { return handed ? handed->day : hand_over.day; }

void App::work_out_again() {
  const auto checks = checks_of(*this);
  const auto& family = session.family();
  const auto marks = advice::marks_of(content.library());
  again.next = advice::next_check(family, checks, marks);
  again.first = again.next.on <= result_day() + marks.first_days;
}

void App::to_again() {
  again = {};
  where = Where::again;
  compare_with_kept();
  work_out_again();
  look_at_kept([this] {
    compare_with_kept();
    work_out_again();
    shell::redraw();
  });
}

void draw_again(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "again", .title = app.say("again/title"), .back = true});
  kit::heading(ui, "title", app.say("again/title"));
  draw_day(app);
  draw_history(app);
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "close", .label = app.say("again/close")}, .quiet = {}});
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::main || top == kit::TopPress::back) app.where = Where::result;
}

}  // namespace rehale::screens
