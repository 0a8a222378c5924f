// One thing to mend: what you told us, what it does to your dose, how to do it, try it now.
#include <algorithm>

#include "core/advice/dose_word.h"
#include "web/screens/answer_words.h"
#include "web/screens/mend_words.h"
#include "web/screens/pictures.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

int shown_items(const App& app) {
  return std::min(static_cast<int>(app.session.advice().to_mend.size()), advice::k_at_a_time);
}

const check::Given* given_to(const App& app, int question) {
  const auto& given = app.session.run().given();
  const auto found = std::ranges::find(given, question, &check::Given::question);
  return found == given.end() ? nullptr : &*found;
}

void draw_because(App& app, const advice::ToMend& item) {
  kit::Ui& ui = *app.ui;
  kit::heading(ui, "told-title", app.say("mend/told"), kit::Heading::section);
  kit::paragraph(ui, "lacks", mend_words(app, app.mending, "lacks"));
  std::vector<std::string> lines;
  for (const advice::Because& because : item.because) {
    const check::Given* given = given_to(app, because.question);
    if (given == nullptr) continue;
    for (std::string& line : answer_lines(app, *given, because.parts))
      lines.push_back(std::move(line));
  }
  if (lines.size() > 3) lines.resize(3);
  if (!lines.empty()) kit::bullets(ui, "told-list", lines);
}

// What the dose model says of this habit, where it has an answer, and the way to see it.
bool draw_model(App& app) {
  kit::Ui& ui = *app.ui;
  const auto word = advice::dose_word(app.session.family(), habit_of(app, app.mending));
  if (!word) return false;
  kit::paragraph(ui, "model", app.say("where/share/" + std::string(word->likely)));
  kit::caption(ui, "model-limits", app.say(word->assumed ? "where/assumed" : "where/estimate"));
  return kit::text_button(ui, {.id = "where", .label = app.say("where/see")});
}

// True when the person asks where the dose goes.
bool draw_words(App& app, const advice::ToMend& item) {
  kit::Ui& ui = *app.ui;
  draw_because(app, item);
  kit::heading(ui, "dose-title", app.say("mend/dose"), kit::Heading::section);
  kit::paragraph(ui, "reason", mend_words(app, app.mending, "reason"));
  kit::paragraph(ui, "dose", mend_words(app, app.mending, "dose"));
  const bool asks = draw_model(app);
  kit::begin_card(ui, {.id = "how", .tone = kit::Tone::going_well, .label = app.say("mend/how")});
  kit::paragraph(ui, "remedy", mend_words(app, app.mending, "remedy"));
  kit::end_card(ui);
  const advice::Practice practice = advice::practice_of(app.session.run(), item.technique);
  if (practice.tries > 0) {
    kit::caption(ui, "practised",
                 kit::fill(app.say("mend/practised"), {{"right", std::to_string(practice.right)},
                                                       {"tries", std::to_string(practice.tries)}}));
  }
  return asks;
}

void go_on(App& app) {
  if (app.mending + 1 < shown_items(app)) {
    ++app.mending;
  } else {
    app.where = Where::result;
  }
}

}  // namespace

void draw_mend(App& app) {
  kit::Ui& ui = *app.ui;
  const advice::ToMend& item = app.session.advice().to_mend[static_cast<std::size_t>(app.mending)];
  const int here = app.mending + 1;
  const int of = shown_items(app);
  const std::string words = kit::fill(app.say("mend/progress"),
                                      {{"here", std::to_string(here)}, {"of", std::to_string(of)}});
  const auto top = kit::begin_screen(ui, {.id = "mend",
                                          .visit = std::to_string(here),
                                          .title = app.say("mend/title"),
                                          .back = true,
                                          .progress = {here, of, words}});
  const auto pose = mend_pose(app, app.mending);
  if (!pose.empty()) {
    kit::picture(ui, {.id = "picture",
                      .alternative = pose_words(app, pose),
                      .draw = moving_picture(app, app.session.family_id(), pose)});
  }
  kit::heading(ui, "title", mend_words(app, app.mending, "name"));
  const bool asks_where = draw_words(app, item);
  const bool run = run_button(app);
  const bool can_try =
      !app.handed && app.session.run().practice_question(item.technique).has_value();
  const std::string& next = app.say(here < of ? "mend/next" : "mend/done");
  kit::Actions actions{.main = {.id = "try", .label = app.say("mend/try")},
                       .quiet = {.id = "next", .label = next}};
  if (!can_try) actions = {.main = {.id = "next", .label = next}, .quiet = {}};
  const auto pressed = kit::end_screen(ui, actions);
  if (top == kit::TopPress::help) return app.to_about();
  if (asks_where) {
    return app.to_where_it_goes(
        advice::puff_with(app.session.family(), {habit_of(app, app.mending)}));
  }
  if (run) return app.to_run_through();
  if (top == kit::TopPress::back) app.where = Where::result;
  if (pressed == kit::ActionPress::main && can_try) return app.begin_practice();
  if (pressed != kit::ActionPress::none) go_on(app);
}

}  // namespace rehale::screens
