// What the person sees on their inhaler and knows of it: the numbers from which the dates are made.
#include <algorithm>

#include "web/screens/care_parts.h"
#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using catalog::Criterion;
using exchange::CareState;

double labelled(App& app, const kit::Stepper& stepper, double value) {
  kit::paragraph(*app.ui, stepper.id + "-name", stepper.name);
  return kit::stepper(*app.ui, stepper, value);
}

int whole(App& app, const kit::Stepper& stepper, int value) {
  return static_cast<int>(labelled(app, stepper, value));
}

struct DateField {
  std::string id;
  std::string name;       // "Opened on"
  Day last = k_last_day;  // no later than that
  int first_year = 2000, last_year = 2100;
};

// As many years back as it takes to lie in the past: "December" in January is last year's.
Day put_back(Civil date, Day last) {
  while (date.year > 1970) {
    date.day = std::min(date.day, days_in_month(date.year, date.month));
    if (day_of(date) <= last) return day_of(date);
    --date.year;
  }
  return last;
}

// A last day of a month stays the last day when the month changes.
Day draw_date(App& app, const DateField& field, Day day) {
  const Civil was = civil_of(day);
  const auto named = [&](const char* part) {
    return kit::fill(app.say(std::string("care/") + part), {{"what", field.name}});
  };
  Civil date = was;
  const int length = days_in_month(was.year, was.month);
  date.day = whole(
      app,
      {.id = field.id + "-d", .name = named("day"), .min = 1, .max = static_cast<double>(length)},
      was.day);
  date.month = whole(app,
                     {.id = field.id + "-m",
                      .name = named("month"),
                      .unit = month_words(app.content.texts(), was.month),
                      .min = 1,
                      .max = 12},
                     was.month);
  date.year = whole(app,
                    {.id = field.id + "-y",
                     .name = named("year"),
                     .min = static_cast<double>(field.first_year),
                     .max = static_cast<double>(field.last_year)},
                    was.year);
  if (date.month != was.month || date.year != was.year) {
    const int now = days_in_month(date.year, date.month);
    date.day = was.day == length ? now : std::min(date.day, now);
  }
  kit::status_line(*app.ui, field.id + "-words", date_words(app.content.texts(), day));
  return date == was ? day : put_back(date, field.last);
}

// A day that the person may know, behind a button; `start` is where the steppers begin.
void draw_known_day(App& app, const char* ask, const DateField& field, std::optional<Day>& day,
                    Day start) {
  const bool on =
      kit::toggle_button(*app.ui, {.id = field.id, .label = app.say(ask)}, day.has_value());
  if (on != day.has_value()) {
    day = on ? std::optional(start) : std::nullopt;
    return;
  }
  if (day) day = draw_date(app, field, *day);
}

DateField past(const App& app, const char* id, const char* name, Day today) {
  const int year = civil_of(today).year;
  return {
      .id = id, .name = app.say(name), .last = today, .first_year = year - 5, .last_year = year};
}

void draw_use(App& app, const catalog::Care& numbers, CareState& told) {
  const bool may_be_needed = numbers.find("refill_as_needed") != nullptr;
  if (may_be_needed) {
    kit::paragraph(*app.ui, "how-ask", app.say("care/how"));
    const kit::Choices choices{
        .id = "how",
        .name = app.say("care/how"),
        .options = {{.id = "every-day", .label = app.say("care/every-day")},
                    {.id = "as-needed", .label = app.say("care/as-needed")}}};
    const int chosen = kit::one_of(*app.ui, choices, told.doses_a_day == 0 ? 1 : 0);
    if (chosen == 1 && told.doses_a_day != 0) told.doses_a_day = 0;
    if (chosen == 0 && told.doses_a_day == 0) told.doses_a_day = 1;
  }
  if (told.doses_a_day == 0) {
    const Criterion* doses = numbers.find("doses");
    const int start = told.full.value_or(static_cast<int>(doses->target_low.value_or(1)));
    told.full = whole(app,
                      {.id = "full",
                       .name = app.say("care/full"),
                       .min = 1,
                       .max = most_on_counter(numbers),
                       .step = 1},
                      start);
    return;
  }
  told.doses_a_day = whole(app,
                           {.id = "doses-a-day",
                            .name = app.say("care/doses-a-day"),
                            .unit = unit_words(app, told.doses_a_day, "times"),
                            .min = 1,
                            .max = 4},
                           told.doses_a_day);
  told.puffs = whole(app,
                     {.id = "puffs",
                      .name = app.say(is_sprayed(numbers) ? "care/puffs" : "care/doses"),
                      .min = 1,
                      .max = static_cast<double>(std::min(
                          exchange::k_most_puffs, exchange::k_most_a_day / told.doses_a_day))},
                     told.puffs);
}

// When it was last used: only where sprays to the air hang on it.
void draw_last_used(App& app, const catalog::Care& numbers, Day today) {
  if (!is_sprayed(numbers)) return;
  CareState& told = app.care.told;
  kit::paragraph(*app.ui, "used-ask", app.say("care/used-ask"));
  const kit::Choices choices{.id = "used",
                             .name = app.say("care/used-ask"),
                             .options = {{.id = "new", .label = app.say("care/used-new")},
                                         {.id = "day", .label = app.say("care/used-day")},
                                         {.id = "unknown", .label = app.say("care/used-unknown")}}};
  const int chosen = kit::one_of(*app.ui, choices, told.is_new ? 0 : told.used ? 1 : 2);
  told.is_new = chosen == 0;
  if (chosen != 1) told.used.reset();
  else if (!told.used) told.used = today;
  else told.used = draw_date(app, past(app, "used-on", "care/used-on", today), *told.used);
}

void draw_days(App& app, const catalog::Care& numbers, Day today) {
  CareState& told = app.care.told;
  draw_known_day(app, "care/opened", past(app, "opened", "care/opened-day", today), told.opened,
                 today);
  const int year = civil_of(today).year;
  const Civil now = civil_of(today);
  const Day month_end = day_of({now.year, now.month, days_in_month(now.year, now.month)});
  draw_known_day(app, "care/expiry",
                 {.id = "expiry",
                  .name = app.say("care/expiry-day"),
                  .first_year = year - 5,
                  .last_year = year + 8},
                 told.expiry, month_end);
  if (told.expiry) kit::caption(*app.ui, "expiry-hint", app.say("care/expiry-hint"));
  draw_last_used(app, numbers, today);
  if (numbers.find("clean_every") != nullptr) {
    draw_known_day(app, "care/cleaned", past(app, "cleaned", "care/cleaned-day", today),
                   told.cleaned, today);
  }
}

// 0 is "not set": then the family's own number counts.
void draw_leaflet_number(App& app, const catalog::Care& numbers, const LeafletNumber& one) {
  if (numbers.find(one.number) == nullptr) return;
  std::optional<int>& told = app.care.told.leaflet.*one.told;
  const int most = one.is_days ? exchange::k_most_days : exchange::k_most_sprays;
  kit::Stepper stepper{.id = std::string("told-") + one.id,
                       .name = app.say(std::string("care/told/") + one.id),
                       .unit = told ? std::string() : app.say("care/not-set"),
                       .max = static_cast<double>(most)};
  if (!told) {
    stepper.shown = "\xE2\x80\x93";  // a dash
    stepper.spoken = stepper.unit;
  }
  const int next = whole(app, stepper, told.value_or(0));
  told = next == 0 ? std::nullopt : std::optional(next);
}

void draw_leaflet(App& app, const catalog::Care& numbers) {
  app.care.leaflet_open = kit::disclosure(
      *app.ui, {.id = "leaflet", .label = app.say("care/leaflet")}, app.care.leaflet_open);
  if (!app.care.leaflet_open) return;
  kit::paragraph(*app.ui, "leaflet-lead", app.say("care/leaflet-lead"));
  for (const LeafletNumber& one : k_leaflet_numbers) draw_leaflet_number(app, numbers, one);
}

}  // namespace

void draw_care(App& app) {
  kit::Ui& ui = *app.ui;
  const catalog::Care& numbers = *app.content.care(app.picked());
  CareState& told = app.care.told;
  const Day today = shell::today();
  const CareState was = told;
  const auto top =
      kit::begin_screen(ui, {.id = "care", .title = app.say("care/title"), .back = true});
  kit::heading(ui, "title", app.say("care/title"));
  kit::paragraph(ui, "lead", app.say("care/lead"));
  told.left = whole(app,
                    {.id = "left",
                     .name = app.say("care/left"),
                     .unit = unit_words(app, told.left, counts_in(numbers)),
                     .max = most_on_counter(numbers)},
                    told.left);
  kit::caption(ui, "typed", app.say("care/typed"));
  if (told.left != was.left) app.care.recounted = true;
  draw_use(app, numbers, told);
  draw_days(app, numbers, today);
  draw_leaflet(app, numbers);
  const bool open = kit::quiet_button(ui, {.id = "open", .label = app.say("care/open")});
  if (!app.care.message.empty()) kit::status_line(ui, "message", app.say(app.care.message));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "show", .label = app.say("care/show")}, .quiet = {}});
  if (!(told == was)) shell::redraw();
  if (open) return app.open_care_file();
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) app.where = app.care.known ? Where::care_plan : app.care.back;
  if (pressed == kit::ActionPress::main) app.show_care_plan();
}

}  // namespace rehale::screens
