// A check that somebody asked for by a link: what was set, until when, for which inhalers. Only
// these can be picked; the rest is an ordinary check.
#include "web/screens/asked.h"

#include <algorithm>

#include "web/screens/dates.h"
#include "web/screens/pictures.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

std::string dated(const App& app, const char* path, Day day) {
  return kit::fill(app.say(path), {{"date", date_words(app.content.texts(), day)}});
}

std::string who_asks(const App& app) {
  if (!app.assigned->due) return app.say("asked/open");
  const bool late =
      exchange::timing_of(*app.assigned, shell::today()) == exchange::Timing::after_due;
  return dated(app, late ? "asked/late" : "asked/until", *app.assigned->due);
}

// What the link asks for that this page does not have. With several families the steps can be of
// one that is not loaded.
bool lacks_steps(const exchange::Assignment& set, const catalog::Family& family) {
  if (set.families.size() > 1) return false;
  return std::ranges::any_of(set.focus, [&family](const catalog::Id& id) {
    return check::focus_of(family, std::vector{id}).empty();
  });
}

}  // namespace

std::string asked_language() {
  const auto set = exchange::read_assignment(shell::launch_option(shell::k_option_asked));
  return set ? set->language : std::string();
}

void draw_asked_facts(App& app) {
  if (!app.assigned) return;
  kit::Ui& ui = *app.ui;
  kit::heading(ui, "asked", who_asks(app), kit::Heading::section);
  if (!app.assigned->focus.empty()) kit::paragraph(ui, "asked-focus", app.say("asked/focus"));
  if (app.assigned->key) kit::paragraph(ui, "asked-sealed", app.say("asked/sealed"));
}

std::string how_many(const App& app) {
  if (!app.assigned || app.assigned->questions == 0) return app.say("ready/length");
  return kit::fill(app.say("asked/length"), {{"count", std::to_string(app.assigned->questions)}});
}

void App::open_asked(const std::string& code) {
  auto set = exchange::read_assignment(code);
  if (!set) return show_unread(set.error());
  if (!exchange::check_assignment(*set, content.library())) return show_link_trouble("asked/other");
  if (exchange::timing_of(*set, shell::today()) == exchange::Timing::expired) {
    show_link_trouble("asked/ended");
    trouble.detail = date_words(content.texts(), *set->expires);
    return;
  }
  assigned = *std::move(set);
  if (assigned->families.size() > 1) {
    where = Where::asked;
  } else {
    pick_family(assigned->families.front());
  }
}

bool App::can_be_asked() {
  if (!assigned || !lacks_steps(*assigned, content.family(picked_)->course->family)) return true;
  drop_asked();
  show_link_trouble("asked/other");
  return false;
}

void App::drop_asked() {
  assigned.reset();
  to_choose();
}

void draw_asked(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top = kit::begin_screen(ui, {.id = "asked", .title = app.say("asked/title")});
  kit::heading(ui, "title", app.say("asked/title"));
  draw_asked_facts(app);
  kit::heading(ui, "pick", app.say("asked/pick"), kit::Heading::section);
  kit::CardGrid grid{"devices", app.say("asked/pick"), {}};
  for (const catalog::Id& family : app.assigned->families) {
    grid.cards.push_back({family, app.say("families/" + family + "/name"),
                          app.say("families/" + family + "/tell"),
                          scene_picture(app, family, {"open"})});
  }
  const int picked = kit::card_grid(ui, grid);
  const bool own = kit::quiet_button(ui, {.id = "own", .label = app.say("asked/own")});
  kit::notice(ui, "danger", app.say("choose/danger"));
  kit::caption(ui, "limits", app.say("choose/limits"));
  kit::end_screen(ui);
  if (top == kit::TopPress::help) return app.to_about();
  if (own) return app.drop_asked();
  if (picked >= 0) app.pick_family(grid.cards[static_cast<std::size_t>(picked)].id);
}

}  // namespace rehale::screens
