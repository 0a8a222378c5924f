#include "web/screens/sheet.h"

#include <algorithm>
#include <cmath>

#include "web/screens/dates.h"
#include "web/screens/mend_words.h"

namespace rehale::screens {

namespace {

class Sheet {
 public:
  void add(const char* kind, std::string text) {
    std::ranges::replace(text, '\n', ' ');
    lines_ += std::string(kind) + ' ' + text + '\n';
  }
  [[nodiscard]] std::string take() { return std::move(lines_); }

 private:
  std::string lines_;
};

// Whole minutes from the first question to the last answer of the check; practice is not counted.
std::string minutes(const App& app) {
  double last_ms = 0;
  for (const check::Event& event : app.session.run().log()) {
    if (event.what == check::What::answered) last_ms = event.at_ms;
  }
  return std::to_string(std::max(1, static_cast<int>(std::lround(last_ms / 60'000))));
}

void add_facts(Sheet& sheet, const App& app) {
  const Day day = app.handed ? app.handed->day : app.hand_over.day;
  sheet.add("title", app.say("sheet/title"));
  sheet.add("fact",
            kit::fill(app.say("sheet/facts"), {{"family", app.tell("name")},
                                               {"date", date_words(app.content.texts(), day)},
                                               {"minutes", minutes(app)}}));
  sheet.add("fact", app.say("sheet/self-reported"));
  sheet.add("fact", app.say("sheet/label"));
}

void add_to_mend(Sheet& sheet, const App& app) {
  const auto& items = app.session.advice().to_mend;
  const int shown = std::min(static_cast<int>(items.size()), advice::k_at_a_time);
  if (shown == 0) return;
  sheet.add("section", app.say("sheet/mend"));
  for (int n = 0; n < shown; ++n) {
    sheet.add("item", std::to_string(n + 1) + ". " + mend_words(app, n, "name"));
    sheet.add("why", mend_words(app, n, "lacks") + " " + mend_words(app, n, "reason"));
    sheet.add("how", mend_words(app, n, "remedy"));
  }
}

void add_names(Sheet& sheet, const App& app, const char* title, const std::vector<int>& which) {
  if (which.empty()) return;
  sheet.add("section", app.say(title));
  for (const int technique : which) {
    const auto& id = app.session.family().techniques[static_cast<std::size_t>(technique)].id;
    sheet.add("well", app.tell("techniques/" + id + "/name"));
  }
}

// "sheet/<part>/1", "sheet/<part>/2"…
void add_lines(Sheet& sheet, const App& app, const char* kind, const std::string& part) {
  for (int n = 1;; ++n) {
    const std::string& line = app.say("sheet/" + part + "/" + std::to_string(n));
    if (line.empty()) return;
    sheet.add(kind, line);
  }
}

}  // namespace

std::string write_sheet(const App& app) {
  const advice::Advice& advice = app.session.advice();
  Sheet sheet;
  sheet.add("qr", app.hand_over.link);
  add_facts(sheet, app);
  add_to_mend(sheet, app);
  std::vector<int> well;
  for (const advice::GoingWell& item : advice.going_well) well.push_back(item.technique);
  add_names(sheet, app, "sheet/well", well);
  add_names(sheet, app, "result/cannot-tell", advice.cannot_tell);
  sheet.add("section", app.say("sheet/teach"));
  add_lines(sheet, app, "script", "script");
  add_lines(sheet, app, "tick", "ticks");
  sheet.add("section", app.say("sheet/question"));
  sheet.add("ask", " ");
  sheet.add("section", app.say("sheet/care"));
  add_lines(sheet, app, "caution", "cautions");
  sheet.add("foot", kit::fill(app.say("sheet/foot"), {{"content", app.session.content()}}));
  return sheet.take();
}

}  // namespace rehale::screens
