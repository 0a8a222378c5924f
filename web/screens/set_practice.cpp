// Set a practice: for which inhalers, by when; then the link. The rest is folded away.
#include "web/screens/screens.h"
#include "web/screens/set_parts.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void draw_families(App& app) {
  SetPractice& set = app.set_practice;
  const auto& families = app.content.library().families;
  kit::heading(*app.ui, "families-title", app.say("set/families"), kit::Heading::section);
  kit::Choices choices{.id = "families", .name = app.say("set/families")};
  for (const catalog::Id& family : families)
    choices.options.push_back({.id = family, .label = app.say("families/" + family + "/name")});
  set.families.resize(families.size());
  set.families = kit::several_of(*app.ui, choices, set.families);
}

void draw_due(App& app) {
  SetPractice& set = app.set_practice;
  kit::heading(*app.ui, "due-title", app.say("set/due"), kit::Heading::section);
  kit::Choices choices{.id = "due", .name = app.say("set/due")};
  for (const int weeks : k_due_weeks) {
    const std::string count = std::to_string(weeks);
    choices.options.push_back({.id = "due-" + count, .label = app.say("set/weeks/" + count)});
  }
  set.due = kit::one_of(*app.ui, choices, set.due);
}

exchange::RandomId random_id() {
  exchange::RandomId id;
  for (std::size_t n = 0; n < id.size(); n += 4) {  // of 53 random bits the lower 32
    std::uint64_t bits = shell::random_seed();
    for (std::size_t k = 0; k < 4; ++k, bits >>= 8U) id[n + k] = static_cast<std::uint8_t>(bits);
  }
  return id;
}

exchange::Assignment assignment_of(const App& app) {
  const SetPractice& set = app.set_practice;
  exchange::Assignment made;
  made.families = set_families(app);
  made.focus = set.focus;
  made.questions = k_set_questions[set.questions];
  if (set.language > 0)
    made.language = app.content.library().languages[static_cast<std::size_t>(set.language - 1)];
  const int weeks = k_due_weeks[set.due];
  if (weeks > 0) {
    made.due = shell::today() + 7 * weeks;
    made.expires = *made.due + 7 * k_weeks_after_due;
  }
  made.id = random_id();
  made.key = set.key;
  return made;
}

}  // namespace

std::vector<catalog::Id> set_families(const App& app) {
  std::vector<catalog::Id> picked;
  const auto& families = app.content.library().families;
  for (std::size_t n = 0; n < families.size() && n < app.set_practice.families.size(); ++n) {
    if (app.set_practice.families[n]) picked.push_back(families[n]);
  }
  return picked;
}

void App::to_set_practice() { where = Where::set_practice; }

void App::make_set_link() {
  set_practice.made = assignment_of(*this);
  set_practice.told.clear();
  const auto code = exchange::write_assignment(set_practice.made);
  if (!code) {
    set_practice.told = code.error().where == "focus" ? "set/too-many" : "hand/not-done";
    ui->say(say(set_practice.told));
    return;
  }
  set_practice.link = shell::launch_option(shell::k_option_address) + "#a=" + *code;
  set_practice.lines.clear();
  set_practice.no_qr = false;
  where = Where::set_link;
  shell::ask_page("qr", set_practice.link,
                  [this, link = set_practice.link](const Result<std::string>& lines) {
                    if (link != set_practice.link) return;  // another one by now
                    set_practice.no_qr = !lines;
                    if (lines) set_practice.lines = *lines;
                    shell::redraw();
                  });
}

void draw_set_practice(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "set-practice", .title = app.say("set/title"), .back = true});
  kit::heading(ui, "title", app.say("set/title"));
  kit::paragraph(ui, "lead", app.say("set/lead"), kit::Ink::soft);
  draw_families(app);
  draw_due(app);
  draw_set_more(app);
  draw_set_seal(app);
  const std::string& told = app.set_practice.told;
  if (!told.empty()) kit::paragraph(ui, "told", app.say(told));
  const auto pressed = kit::end_screen(ui, {.main = {.id = "make",
                                                     .label = app.say("set/make"),
                                                     .enabled = !set_families(app).empty(),
                                                     .why_not = app.say("set/pick-first")},
                                            .quiet = {}});
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) return app.to_desk();
  if (pressed == kit::ActionPress::main) app.make_set_link();
}

}  // namespace rehale::screens
