// "Try it now": a fresh question about the thing to mend, explained at once. Counted apart from the
// check.
#include "web/screens/answer_words.h"
#include "web/screens/question_body.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

// What the answer showed, and the mended order when cards were out of place.
void draw_told(App& app, const check::Marking& marking) {
  kit::Ui& ui = *app.ui;
  const kit::Tone tone = marking.right ? kit::Tone::going_well : kit::Tone::to_mend;
  kit::begin_card(ui, {.id = "told", .tone = tone});
  if (marking.unsure) kit::paragraph(ui, "unsure", app.say("practice/unsure"));
  const auto whys = why_lines(app, app.draft.question, marking);
  for (std::size_t n = 0; n < whys.size(); ++n) {
    kit::paragraph(ui, "why-" + std::to_string(n), whys[n]);
  }
  if (!marking.right && !marking.mended.empty()) {
    kit::paragraph(ui, "one-way", app.say("practice/one-way"));
    std::vector<std::string> steps;
    for (const auto& action : marking.mended)
      steps.push_back(app.tell("actions/" + action + "/label"));
    kit::bullets(ui, "mended", steps);
  }
  kit::end_card(ui);
}

void draw_revealed_actions(App& app, kit::TopPress top) {
  const int technique =
      app.session.advice().to_mend[static_cast<std::size_t>(app.mending)].technique;
  const bool more = app.session.run().practice_question(technique).has_value();
  kit::Actions actions{.main = {.id = "go-on", .label = app.say("practice/go-on")}, .quiet = {}};
  if (more) actions.quiet = {.id = "another", .label = app.say("practice/another")};
  const auto pressed = kit::end_screen(*app.ui, actions);
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::quiet) return app.begin_practice();
  if (pressed == kit::ActionPress::main || top == kit::TopPress::back) app.where = Where::mend;
}

void draw_open_actions(App& app, kit::TopPress top) {
  const kit::Actions actions{.main = {.id = "check",
                                      .label = app.say("practice/check"),
                                      .enabled = has_answer(app),
                                      .why_not = app.say(answer_hint(app))},
                             .quiet = {.id = "unsure", .label = app.say("question/unsure")}};
  const auto pressed = kit::end_screen(*app.ui, actions);
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) app.where = Where::mend;
  if (pressed == kit::ActionPress::none) return;
  app.give_practice(pressed == kit::ActionPress::main ? drafted_answer(app)
                                                      : check::Answer{.unsure = true});
  app.ui->scroll_to("told");
  if (app.revealed)
    app.ui->say(app.say(app.revealed->right ? "practice/say-well" : "practice/say-mend"));
}

}  // namespace

void draw_practice(App& app) {
  const catalog::Question& asked = app.question(app.draft.question);
  const auto top = kit::begin_screen(
      *app.ui,
      {.id = "practice", .visit = asked.id, .title = app.say("practice/title"), .back = true});
  const check::Marking* revealed = app.revealed ? &*app.revealed : nullptr;
  draw_question_body(app, revealed);
  if (revealed == nullptr) return draw_open_actions(app, top);
  draw_told(app, *revealed);
  draw_revealed_actions(app, top);
}

}  // namespace rehale::screens
