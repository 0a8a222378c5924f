// The timed run-through: before it starts. What it is, what it is not, how to do it.
#include "core/catalog/lookup.h"
#include "web/screens/pictures.h"
#include "web/screens/rehearsal_words.h"
#include "web/screens/run_parts.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

void draw_choices(App& app) {
  Rehearsal& run = app.rehearsal;
  kit::Choices how{.id = "how", .name = app.say("run/how"), .options = {}};
  how.options.push_back({.id = "taps", .label = app.say("run/taps")});
  how.options.push_back({.id = "guide", .label = app.say("run/guide")});
  std::vector<bool> picked{run.taps, run.guided};
  const bool can_two = !app.rehearsed_family().run_through.twice.empty();
  if (can_two) {
    how.options.push_back({.id = "two", .label = app.say("run/two")});
    picked.push_back(run.two);
  }
  picked = kit::several_of(*app.ui, how, std::move(picked));
  run.taps = picked[0];
  run.guided = picked[1];
  run.two = can_two && picked[2];
}

void draw_intro(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top = kit::begin_screen(
      ui, {.id = "run", .visit = "before", .title = app.say("run/title"), .back = true});
  kit::heading(ui, "title", app.say("run/heading"));
  kit::paragraph(ui, "lead", app.say("run/lead"));
  kit::notice(ui, "empty", app.say("run/empty"));
  kit::notice(ui, "dizzy", app.say("run/dizzy"));
  kit::paragraph(ui, "honest", app.say("run/honest"), kit::Ink::soft);
  kit::heading(ui, "how-title", app.say("run/how"), kit::Heading::section);
  draw_choices(app);
  const auto pressed = kit::end_screen(ui, {.main = {.id = "go", .label = app.say("run/start")}});
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) return app.leave_run_through();
  if (pressed == kit::ActionPress::main) app.start_run_through();
}

}  // namespace

bool run_button(App& app) {
  if (app.rehearsed_family().run_through.steps.empty()) return false;
  return kit::quiet_button(*app.ui, {.id = "run", .label = app.say("run/enter")});
}

void draw_run_through(App& app) {
  switch (app.rehearsal.phase()) {
    case Rehearsal::Phase::intro:
      return draw_intro(app);
    case Rehearsal::Phase::acting:
      return draw_run_acting(app);
    case Rehearsal::Phase::told:
      return draw_run_told(app);
  }
}

}  // namespace rehale::screens
