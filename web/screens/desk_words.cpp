#include "web/screens/desk_words.h"

#include <string_view>

#include "web/shell/host.h"

namespace rehale::screens {

namespace {

// Why something could not be read, for the errors of core/exchange.
const char* reason_path(std::string_view code) {
  struct Reason {
    std::string_view code;
    const char* path;
  };
  static constexpr Reason k_reasons[] = {
      {"content-other", "desk/why/other"},   {"code-newer", "desk/why/newer"},
      {"code-check", "desk/why/changed"},    {"code-letter", "desk/why/changed"},
      {"code-length", "desk/why/cut"},       {"code-truncated", "desk/why/cut"},
      {"code-kind", "desk/why/kind"},        {"code-too-long", "desk/why/long"},
      {"file-too-long", "desk/why/long"},    {"log-too-long", "desk/why/long"},
      {"log-not-json", "desk/why/file"},     {"log-shape", "desk/why/file"},
      {"log-truncated", "desk/why/cut"},     {"code-foreign", "desk/why/foreign"},
      {"picture-empty", "desk/why/no-code"}, {"picture-large", "desk/why/large"},
      {"picture-shape", "desk/why/picture"}, {"picture-reader", "desk/why/offline"},
      {"heap-full", "desk/why/full"}};
  for (const Reason& reason : k_reasons) {
    if (reason.code == code) return reason.path;
  }
  return "desk/why/shape";
}

}  // namespace

std::string unread_words(const App& app, const exchange::Unread& item) {
  const std::string& why = app.say(reason_path(item.error.code));
  if (item.place.line == 0) {
    return kit::fill(app.say("desk/at-file"), {{"source", item.place.source}, {"why", why}});
  }
  return kit::fill(app.say(item.place.scanned ? "desk/at-code" : "desk/at-line"),
                   {{"source", item.place.source},
                    {"line", std::to_string(item.place.line)},
                    {"start", item.start},
                    {"why", why}});
}

const std::string& chance_words(const App& app, const cohort::Technique& technique) {
  const double lacking = technique.lacking / 65535.0;
  const char* path = "desk/chance/open";
  if (lacking <= .1) path = "desk/chance/has-very";
  else if (lacking <= .25) path = "desk/chance/has";
  else if (lacking >= .9) path = "desk/chance/lacks-very";
  else if (lacking >= .75) path = "desk/chance/lacks";
  return app.say(path);
}

std::string technique_name(const App& app, const catalog::Family& family, std::size_t technique) {
  const catalog::Technique& told = family.techniques[technique];
  const std::string& name = app.tell_of(family.id, "techniques/" + told.id + "/name");
  if (!told.critical) return name;
  return kit::fill(app.say("desk/key-step"), {{"name", name}});
}

const std::string& family_name(const App& app, const catalog::Id& family) {
  return app.say("families/" + family + "/name");
}

std::string day_words(const App& app, Day day) {
  return day > 0 ? iso_date(day) : app.say("desk/no-day");
}

std::string result_number(const cohort::Record& record) {
  static constexpr char k_letters[] = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  std::string number;
  for (unsigned n = 0; n < 5; ++n) number += k_letters[(record.key >> (5 * n)) & 31U];
  return number;
}

std::string result_words(const App& app, const cohort::Record& record) {
  std::string words = kit::fill(app.say("desk/number"), {{"number", result_number(record)},
                                                         {"date", day_words(app, record.day)}});
  words += ' ' + app.say(record.again ? "desk/filter/again" : "desk/filter/first") + '.';
  if (record.helped) words += ' ' + app.say("desk/helped");
  return words;
}

void save_from_desk(App& app, const std::string& name, const std::string& text) {
  shell::ask_page("save", name + '\n' + text, [&app](const Result<std::string>& answer) {
    app.desk.told = answer ? "hand/saved" : "hand/not-done";
    app.ui->say(app.say(app.desk.told));
    shell::redraw();
  });
}

}  // namespace rehale::screens
