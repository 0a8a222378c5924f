// "I don't know which I have": a few questions about looks, one at a time.
#include <algorithm>

#include "web/screens/pictures.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

int step_index(const App& app, const catalog::Id& id) {
  const auto& steps = app.content.library().finder;
  const auto found = std::ranges::find(steps, id, &catalog::FinderStep::id);
  return static_cast<int>(found - steps.begin());
}

void draw_found(App& app) {
  kit::Ui& ui = *app.ui;
  const catalog::Id family = app.found->family;
  if (family.empty()) {
    kit::heading(ui, "title", app.say("finder-end/unknown"));
    kit::paragraph(ui, "ask", app.say("finder-end/ask-someone"));
    return;
  }
  kit::picture(ui, {.id = "picture",
                    .alternative = app.say("families/" + family + "/tell"),
                    .draw = moving_picture(app, family, {"open"})});
  kit::heading(ui, "title", app.say("families/" + family + "/name"));
  kit::paragraph(ui, "tell", app.say("families/" + family + "/tell"));
  kit::paragraph(ui, "check", app.say("finder-end/looks-like"), kit::Ink::soft);
}

void draw_step(App& app, const catalog::FinderStep& step) {
  kit::Ui& ui = *app.ui;
  kit::heading(ui, "ask", app.say("finder/" + step.id + "/ask"), kit::Heading::question);
  for (const auto& answer : step.answers) {
    const std::string label = app.say("finder/" + step.id + "/answers/" + answer.id);
    if (!kit::quiet_button(ui, {.id = "answer-" + answer.id, .label = label})) continue;
    if (answer.next.empty()) {
      app.found = answer;
    } else {
      app.finder_path.push_back(step_index(app, answer.next));
    }
  }
}

void step_back(App& app) {
  if (app.found) {
    app.found.reset();
  } else {
    app.finder_path.pop_back();
  }
  if (app.finder_path.empty()) app.to_choose();
}

}  // namespace

void draw_finder(App& app) {
  kit::Ui& ui = *app.ui;
  const catalog::FinderStep& step =
      app.content.library().finder[static_cast<std::size_t>(app.finder_path.back())];
  const bool done = app.found.has_value();
  const bool known = done && !app.found->family.empty();
  const auto top = kit::begin_screen(ui, {.id = "which-device",
                                          .visit = done ? "found" : step.id,
                                          .title = app.say("finder-end/title"),
                                          .back = true});
  if (done) {
    draw_found(app);
  } else {
    draw_step(app, step);
  }
  kit::Actions actions;
  if (known) actions.main = {.id = "go", .label = app.say("finder-end/take-it")};
  if (done) actions.quiet = {.id = "again", .label = app.say("finder-end/show-all")};
  const auto pressed = kit::end_screen(ui, actions);
  if (pressed == kit::ActionPress::main) return app.pick_family(catalog::Id(app.found->family));
  if (pressed == kit::ActionPress::quiet) return app.to_choose();
  if (top == kit::TopPress::help) app.to_about();
  if (top == kit::TopPress::back) step_back(app);
}

}  // namespace rehale::screens
