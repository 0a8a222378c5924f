// The check: one question a screen, no verdict until the end, so that answers stay the person's
// own.
#include "web/screens/question_body.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

kit::Progress stones(const App& app) {
  const int here = static_cast<int>(app.session.run().given().size()) + 1;
  const int most = mastery::Plan{}.most;
  return {here, most,
          kit::fill(app.say("question/progress"),
                    {{"here", std::to_string(here)}, {"most", std::to_string(most)}})};
}

void draw_leave_dialog(App& app) {
  kit::Ui& ui = *app.ui;
  const bool closed = kit::begin_dialog(ui, {"leave", app.say("leave/title")});
  kit::paragraph(ui, "leave-tell", app.say("leave/tell"));
  const bool stay = kit::main_button(ui, {.id = "leave-stay", .label = app.say("leave/stay")});
  const bool go = kit::quiet_button(ui, {.id = "leave-go", .label = app.say("leave/go")});
  kit::end_dialog(ui);
  if (closed || stay) app.asks_to_leave = false;
  if (go) app.to_choose();
}

}  // namespace

void draw_question(App& app) {
  kit::Ui& ui = *app.ui;
  const catalog::Question& asked = app.question(app.draft.question);
  const auto top = kit::begin_screen(ui, {.id = "question",
                                          .visit = asked.id,
                                          .title = app.say("question/title"),
                                          .back = true,
                                          .progress = stones(app)});
  draw_question_body(app, nullptr);
  const kit::Actions actions{.main = {.id = "next",
                                      .label = app.say("question/next"),
                                      .enabled = has_answer(app),
                                      .why_not = app.say(answer_hint(app))},
                             .quiet = {.id = "unsure", .label = app.say("question/unsure")}};
  const auto pressed = kit::end_screen(ui, actions);
  if (app.asks_to_leave) return draw_leave_dialog(app);
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) app.asks_to_leave = true;
  if (pressed == kit::ActionPress::main) app.give(drafted_answer(app));
  if (pressed == kit::ActionPress::quiet) app.give({.unsure = true});
}

}  // namespace rehale::screens
