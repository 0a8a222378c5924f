// The link of a set practice: on screen, to the clipboard, on paper.
#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/screens/slips.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void ask_and_tell(App& app, const char* service, const std::string& words, const char* done) {
  shell::ask_page(service, words, [&app, done](const Result<std::string>& answer) {
    app.set_practice.told = answer ? done : "hand/not-done";
    app.ui->say(app.say(app.set_practice.told));
    shell::redraw();
  });
}

// Slips speak the language that was set, whatever this page speaks.
void print(App& app, std::string (*write)(const SetPractice&, const catalog::Texts&)) {
  const std::string& set = app.set_practice.made.language;
  if (set.empty() || set == app.content.language())
    return ask_and_tell(app, "slips", write(app.set_practice, app.content.texts()), "set/printed");
  app.content.read_words(set, [&app, write](const catalog::Texts& texts) {
    const bool here = texts.find("set/slip/title") != nullptr;
    ask_and_tell(app, "slips", write(app.set_practice, here ? texts : app.content.texts()),
                 "set/printed");
  });
}

void draw_code(App& app) {
  const SetPractice& set = app.set_practice;
  if (!set.lines.empty()) {
    kit::qr_code(*app.ui, {.id = "qr", .alternative = app.say("set/qr"), .lines = set.lines});
  } else {
    kit::status_line(*app.ui, "qr-wait", app.say(set.no_qr ? "hand/no-qr" : "loading"));
  }
}

void draw_what(App& app) {
  const exchange::Assignment& made = app.set_practice.made;
  std::vector<std::string> lines;
  std::string families;
  for (const catalog::Id& family : made.families)
    families += (families.empty() ? "" : ", ") + app.say("families/" + family + "/name");
  lines.push_back(families);
  const auto dated = [&](const char* path, Day day) {
    lines.push_back(kit::fill(app.say(path), {{"date", date_words(app.content.texts(), day)}}));
  };
  if (made.due) dated("set/what-due", *made.due);
  if (made.expires) dated("set/what-ends", *made.expires);
  if (made.questions > 0) {
    lines.push_back(kit::fill(app.say("set/count"), {{"count", std::to_string(made.questions)}}));
  }
  if (!made.language.empty()) lines.push_back(app.say("languages/" + made.language));
  if (!made.focus.empty()) {
    lines.push_back(
        kit::fill(app.say("set/what-steps"), {{"count", std::to_string(made.focus.size())}}));
  }
  lines.push_back(app.say(made.key ? "set/sealed" : "set/unsealed"));
  kit::bullets(*app.ui, "what", lines);
}

}  // namespace

void draw_set_link(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "set-link", .title = app.say("set/link-title"), .back = true});
  kit::heading(ui, "title", app.say("set/link-title"));
  draw_code(app);
  kit::paragraph(ui, "lead", app.say("set/link-lead"));
  draw_what(app);
  if (kit::quiet_button(ui, {.id = "slip", .label = app.say("set/print-one")}))
    print(app, write_slip);
  if (kit::quiet_button(ui, {.id = "slips", .label = app.say("set/print-many")}))
    print(app, write_slips);
  if (!app.set_practice.told.empty()) kit::paragraph(ui, "told", app.say(app.set_practice.told));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "copy", .label = app.say("hand/copy")},
                           .quiet = {.id = "change", .label = app.say("set/change")}});
  if (pressed == kit::ActionPress::main)
    ask_and_tell(app, "copy", app.set_practice.link, "hand/copied");
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::quiet || top == kit::TopPress::back) {
    app.set_practice.told.clear();
    app.to_set_practice();
  }
}

}  // namespace rehale::screens
