// Results over time, on the person's own device: kept only once they agreed, shown as what changed,
// gone in one tap. Storage that does not answer or holds rubbish is told and does no harm.
#include "web/screens/history.h"

#include "web/screens/dates.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using State = History::State;

void take(History& history, const Result<std::string>& text) {
  history.kept = {};
  history.state = State::closed;
  if (!text) return;
  history.state = State::none;
  if (text->empty()) return;
  auto kept = exchange::read_kept(*text);
  history.state = kept ? State::agreed : State::rubbish;
  if (kept) history.kept = *std::move(kept);
}

std::string name_of(const App& app, std::size_t technique) {
  return app.tell("techniques/" + app.session.family().techniques[technique].id + "/name");
}

void draw_since(App& app) {
  kit::Ui& ui = *app.ui;
  const History& history = app.history;
  if (!history.since) {
    kit::paragraph(ui, "first", app.say("history/first"));
    return;
  }
  kit::heading(ui, "since",
               kit::fill(app.say("history/since"),
                         {{"date", date_words(app.content.texts(), history.since->day)}}),
               kit::Heading::section);
  const auto all = cohort::overall(history.since->changes);
  kit::paragraph(ui, "overall",
                 app.say(all == cohort::Change::gained ? "history/better"
                         : all == cohort::Change::lost ? "history/less"
                                                       : "history/same"));
  std::vector<std::string> lines;
  for (std::size_t n = 0; n < history.since->changes.size(); ++n) {
    if (history.since->changes[n] == cohort::Change::none) continue;
    const bool gained = history.since->changes[n] == cohort::Change::gained;
    lines.push_back(kit::fill(app.say(gained ? "history/gained" : "history/lost"),
                              {{"step", name_of(app, n)}}));
  }
  if (!lines.empty()) kit::bullets(ui, "changes", lines);
}

void draw_agreed(App& app) {
  kit::Ui& ui = *app.ui;
  const History& history = app.history;
  draw_since(app);
  if (history.other_questions) kit::paragraph(ui, "other", app.say("history/other"));
  if (history.kept.unreadable > 0) {
    kit::paragraph(ui, "unreadable",
                   kit::fill(app.say("history/unreadable"),
                             {{"count", std::to_string(history.kept.unreadable)}}));
  }
  kit::caption(ui, "count",
               kit::fill(app.say("history/count"),
                         {{"count", std::to_string(history.kept.results.size())}}));
}

}  // namespace

void App::look_at_kept(std::function<void()> then) {
  if (history.state == State::agreed || history.state == State::none) return then();
  shell::ask_page("kept", "", [this, then = std::move(then)](const Result<std::string>& text) {
    take(history, text);
    then();
  });
}

void App::write_kept() {
  shell::ask_page("keepResults", exchange::write_kept(history.kept),
                  [this](const Result<std::string>& answer) {
                    history.message = answer ? "history/kept" : "history/no-keep";
                    shell::redraw();
                  });
}

// The run on show joins what is kept, if the person agreed.
void App::keep_result() {
  const auto code = result_code();
  auto read = code ? exchange::read_result(*code) : tl::unexpected(code.error());
  if (!read || history.state != State::agreed || handed) return;
  exchange::keep_result(history.kept, {*code, *std::move(read)});
  compare_with_kept();
  write_kept();
}

void App::compare_with_kept() {
  history.since.reset();
  history.other_questions = false;
  if (const auto code = result_code()) {
    if (const auto read = exchange::read_result(*code)) history.key = exchange::run_key(*read);
  }
  const check::Course& course = session.run().course();
  const cohort::Record now = cohort::record_of(session.run(), {.day = result_day()});
  for (const auto& kept : history.kept.results) {
    if (kept.read.begin.family != course.family.id || kept.read.head.day > now.day) continue;
    if (exchange::run_key(kept.read) == history.key) continue;
    const auto log = exchange::log_of(kept.read, course.family, course.content);
    const auto then = log ? cohort::record_of(course, *log, {.day = kept.read.head.day})
                          : tl::unexpected(log.error());
    if (then) history.since = History::Since{kept.read.head.day, cohort::changes(*then, now)};
    else history.other_questions = true;
  }
}

void App::agree_to_keep() {
  history.state = State::agreed;
  history.kept = {};
  if (care.known) exchange::keep_care(history.kept, care.told);
  keep_result();
}

void App::forget_kept() {
  shell::ask_page("forget", "", [this](const Result<std::string>& answer) {
    if (answer) {
      history = {.state = State::none};
      work_out_again();
    }
    history.message = answer ? "history/deleted" : "history/no-delete";
    shell::redraw();
  });
}

void draw_history(App& app) {
  kit::Ui& ui = *app.ui;
  const State state = app.history.state;
  if (app.handed) return;  // somebody else's, or an old one: not for this device
  kit::heading(ui, "history", app.say("history/title"), kit::Heading::section);
  bool keep = false, forget = false;
  if (state == State::unasked) kit::paragraph(ui, "wait", app.say("history/waiting"));
  if (state == State::closed) kit::paragraph(ui, "closed", app.say("history/no-read"));
  if (state == State::rubbish) kit::paragraph(ui, "rubbish", app.say("history/rubbish"));
  if (state == State::none) {
    kit::paragraph(ui, "offer", app.say("history/offer"));
    kit::paragraph(ui, "where", app.say("history/where"));
    keep = kit::quiet_button(ui, {.id = "keep", .label = app.say("history/keep")});
  }
  if (state == State::agreed) draw_agreed(app);
  if (state == State::agreed || state == State::rubbish)
    forget = kit::quiet_button(ui, {.id = "delete", .label = app.say("history/delete")});
  if (!app.history.message.empty())
    kit::status_line(ui, "history-message", app.say(app.history.message));
  if (keep) app.agree_to_keep();
  if (forget) app.forget_kept();
}

}  // namespace rehale::screens
