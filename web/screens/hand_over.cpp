// Hand over: the result as QR code, link, code, file or paper. All of it is made on this device.
#include "web/screens/hand_over.h"

#include "web/screens/screens.h"
#include "web/screens/sheet.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

constexpr std::size_t k_group = 4;

exchange::ResultHead head_of(const App& app) {
  if (app.handed) return *app.handed;
  exchange::ResultHead head;
  if (app.assigned && !app.seals())
    head.assignment = app.assigned->id;  // the seal carries it itself
  head.page = shell::launch_option(shell::k_option_build);
  if (head.page.size() > 24) head.page.resize(24);  // what the code holds
  head.day = app.hand_over.day;
  head.again = !app.session.run().log().front().recent.empty();
  return head;
}

void ask_for_qr(App& app) {
  shell::ask_page("qr", app.hand_over.link,
                  [&app, link = app.hand_over.link](const Result<std::string>& lines) {
                    if (link != app.hand_over.link) return;  // another result by now
                    app.hand_over.no_qr = !lines;
                    if (lines) app.hand_over.lines = *lines;
                    shell::redraw();
                  });
}

// Asks the page; says and shows how it went.
void ask_and_tell(App& app, const char* service, const std::string& words, const char* done) {
  shell::ask_page(service, words, [&app, done](const Result<std::string>& answer) {
    app.hand_over.told = answer ? done : "hand/not-done";
    app.ui->say(app.say(app.hand_over.told));
    shell::redraw();
  });
}

void draw_code(App& app) {
  kit::Ui& ui = *app.ui;
  HandOver& hand = app.hand_over;
  if (!hand.lines.empty()) {
    kit::qr_code(ui, {.id = "qr", .alternative = app.say("hand/qr"), .lines = hand.lines});
  } else {
    kit::status_line(ui, "qr-wait", app.say(hand.no_qr ? "hand/no-qr" : "loading"));
  }
}

void draw_ways(App& app) {
  kit::Ui& ui = *app.ui;
  HandOver& hand = app.hand_over;
  if (!app.kiosk.on) {  // a shared device keeps and copies nothing
    if (kit::quiet_button(ui, {.id = "copy", .label = app.say("hand/copy")}))
      ask_and_tell(app, "copy", hand.link, "hand/copied");
    if (kit::quiet_button(ui, {.id = "save", .label = app.say("hand/save")}))
      ask_and_tell(app, "save", saved_words(app), "hand/saved");
  } else {
    kit::paragraph(ui, "taken", app.say("kiosk/scan"));
  }
  if (!hand.told.empty()) kit::paragraph(ui, "told", app.say(hand.told));
  hand.spelled =
      kit::toggle_button(ui, {.id = "spell", .label = app.say("hand/spell")}, hand.spelled);
  if (!hand.spelled) return;
  kit::paragraph(ui, "spell-how", app.say("hand/spell-how"));
  kit::paragraph(ui, "code", in_groups(hand.code));
}

}  // namespace

std::string in_groups(const std::string& code) {
  std::string groups;
  for (std::size_t n = 0; n < code.size(); n += k_group) {
    if (n > 0) groups += ' ';
    groups.append(code, n, k_group);
  }
  return groups;
}

Result<std::string> App::result_code() const {
  return exchange::write_result(head_of(*this), session.run().log(), session.family());
}

void App::to_hand_over() {
  const Day day = hand_over.day;
  const auto code = exchange::write_result(head_of(*this), session.run().log(), session.family());
  if (!code) return show_error(code.error());
  where = Where::hand_over;
  hand_over.told.clear();
  hand_over.spelled = false;
  if (seals()) return seal_result(*code);
  hand_over = {};
  hand_over.day = day;
  show_hand_over_code(*code, "#r=");
}

void App::show_hand_over_code(const std::string& code, const char* kind) {
  hand_over.code = code;
  hand_over.link = shell::launch_option(shell::k_option_address) + kind + code;
  ask_for_qr(*this);
}

void draw_hand_over(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top =
      kit::begin_screen(ui, {.id = "hand-over", .title = app.say("hand/title"), .back = true});
  kit::heading(ui, "title", app.say("hand/title"));
  const bool ready = !app.hand_over.code.empty();
  if (ready) {
    draw_code(app);  // first: whole on a phone without scrolling
  } else {
    kit::status_line(ui, "sealing",
                     app.say(app.hand_over.no_seal ? "asked/no-seal" : "asked/sealing"));
  }
  if (app.assigned && !app.handed)
    kit::paragraph(ui, "for", app.say(app.seals() ? "asked/for-sealed" : "asked/for"));
  if (ready) {
    kit::paragraph(ui, "lead", app.say(app.seals() ? "asked/hand-lead" : "hand/lead"));
    draw_ways(app);
  }
  kit::caption(ui, "limits", app.say("hand/limits"));
  kit::caption(ui, "private", app.say("hand/private"));
  kit::Actions actions{.main = {.id = "print", .label = app.say("hand/print")},
                       .quiet = {.id = "done", .label = app.say("mend/done")}};
  if (!ready) actions = {.main = {}, .quiet = {.id = "done", .label = app.say("mend/done")}};
  const auto pressed = kit::end_screen(ui, actions);
  if (pressed == kit::ActionPress::main)
    ask_and_tell(app, "print", write_sheet(app), "hand/printed");
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::quiet || top == kit::TopPress::back) app.where = Where::result;
}

}  // namespace rehale::screens
