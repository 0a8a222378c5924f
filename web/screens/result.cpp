// What the check says: what goes well, up to three things to mend, what could not be told.
#include <algorithm>

#include "core/advice/dose_word.h"
#include "web/screens/mend_words.h"
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

const std::string& technique_words(const App& app, int technique, const char* what) {
  const auto& id = app.session.family().techniques[static_cast<std::size_t>(technique)].id;
  return app.tell("techniques/" + id + "/" + what);
}

// One card says what it is; several also say which.
std::string card_label(const App& app, int here, int of) {
  if (of == 1) return {};
  return kit::fill(app.say("mend/progress"),
                   {{"here", std::to_string(here)}, {"of", std::to_string(of)}});
}

void draw_to_mend(App& app) {
  kit::Ui& ui = *app.ui;
  const auto& items = app.session.advice().to_mend;
  const int shown = std::min(static_cast<int>(items.size()), advice::k_at_a_time);
  for (int n = 0; n < shown; ++n) {
    const std::string id = "mend-" + std::to_string(n + 1);
    kit::begin_card(ui,
                    {.id = id, .tone = kit::Tone::to_mend, .label = card_label(app, n + 1, shown)});
    kit::heading(ui, id + "-name", mend_words(app, n, "name"), kit::Heading::section);
    kit::paragraph(ui, id + "-why", mend_words(app, n, "reason"));
    const std::string name = app.say("result/show-me") + ": " + mend_words(app, n, "name");
    if (kit::quiet_button(ui, {.id = id + "-show",
                               .label = app.say("result/show-me"),
                               .icon = kit::Icon::chevron_right,
                               .name = name})) {
      app.mending = n;
      app.where = Where::mend;
    }
    kit::end_card(ui);
  }
  if (static_cast<int>(items.size()) > shown) {
    kit::paragraph(ui, "later", app.say("result/later"), kit::Ink::soft);
  }
}

void draw_going_well(App& app) {
  const auto& items = app.session.advice().going_well;
  if (items.empty()) return;
  kit::begin_card(*app.ui, {.id = "well", .tone = kit::Tone::going_well});
  std::vector<std::string> lines;
  lines.reserve(items.size());
  for (const advice::GoingWell& item : items) {
    lines.push_back(technique_words(app, item.technique, "has"));
  }
  kit::bullets(*app.ui, "well-list", lines);
  kit::end_card(*app.ui);
}

void draw_open_ends(App& app) {
  const advice::Advice& advice = app.session.advice();
  if (!advice.differing.empty()) {
    kit::heading(*app.ui, "differ-title", app.say("result/differing"), kit::Heading::section);
    std::vector<std::string> lines;
    for (const auto& item : advice.differing)
      lines.push_back(technique_words(app, item.technique, "name"));
    kit::bullets(*app.ui, "differ-list", lines);
  }
  if (!advice.cannot_tell.empty()) {
    kit::heading(*app.ui, "open-title", app.say("result/cannot-tell"), kit::Heading::section);
    std::vector<std::string> lines;
    for (const int technique : advice.cannot_tell)
      lines.push_back(technique_words(app, technique, "name"));
    kit::bullets(*app.ui, "open-list", lines);
  }
}

// The puff with the habits shown here, where the dose model has an answer.
bool asks_where(App& app) {
  if (!advice::good_puff(app.session.family())) return false;
  return kit::quiet_button(*app.ui, {.id = "where", .label = app.say("where/see")});
}

void to_where(App& app) {
  std::vector<catalog::Id> habits;
  const int count = static_cast<int>(app.session.advice().to_mend.size());
  const int shown = std::min(count, advice::k_at_a_time);
  habits.reserve(static_cast<std::size_t>(shown));
  for (int n = 0; n < shown; ++n) {
    habits.push_back(habit_of(app, n));
  }
  app.to_where_it_goes(advice::puff_with(app.session.family(), habits));
}

// The actions at the bottom: mend the first one, and how to leave.
kit::Actions leaving(const App& app, bool mending) {
  const char* leave = app.kiosk.on ? "kiosk/done" : (app.handed ? "hand/own" : "result/start-over");
  const kit::ActionButton again{.id = "again", .label = app.say(leave)};
  if (!mending) return {.main = again, .quiet = {}};
  return {.main = {.id = "mend", .label = app.say("result/mend-first")}, .quiet = again};
}

void leave(App& app) {
  if (app.kiosk.on) return app.end_kiosk_visit();
  if (app.handed) return app.to_choose();
  app.where = Where::ready;
}

}  // namespace

void draw_result(App& app) {
  kit::Ui& ui = *app.ui;
  const advice::Advice& advice = app.session.advice();
  const bool mending = !advice.to_mend.empty();
  const auto top =
      kit::begin_screen(ui, {.id = "result", .title = app.say("result/title"), .back = false});
  kit::heading(ui, "title", app.say("result/heading"));
  const char* lead =
      mending ? "result/lead-mend" : (advice.ready ? "result/lead-ready" : "result/lead-open");
  draw_handed(app);
  kit::paragraph(ui, "lead", app.say(lead));
  draw_to_mend(app);
  draw_going_well(app);
  draw_open_ends(app);
  const bool where = asks_where(app);
  const bool run = run_button(app);
  const bool hand_over = kit::quiet_button(ui, {.id = "hand-over", .label = app.say("hand/ask")});
  const bool own = !app.kiosk.on;  // for a device of one's own only
  const bool check_again =
      own && kit::quiet_button(ui, {.id = "check-again", .label = app.say("again/ask")});
  const bool care = own && kit::quiet_button(ui, {.id = "care", .label = app.say("care/ask")});
  kit::caption(ui, "limits", app.say("result/limits"));
  const auto pressed = kit::end_screen(ui, leaving(app, mending));
  if (top == kit::TopPress::help) return app.to_about();
  if (where) return to_where(app);
  if (run) return app.to_run_through();
  if (hand_over) return app.to_hand_over();
  if (check_again) return app.to_again();
  if (care) return app.to_care();
  if (pressed == kit::ActionPress::none) return;
  if (mending && pressed == kit::ActionPress::main) {
    app.mending = 0;
    app.where = Where::mend;
  } else {
    leave(app);
  }
}

}  // namespace rehale::screens
