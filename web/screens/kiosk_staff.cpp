// What staff see of a shared device: counts of the day, how it runs, how everybody begins. Behind a
// code that the page asks for. Cells of fewer than five are hidden.
#include <algorithm>
#include <array>
#include <string_view>

#include "core/exchange/csv.h"
#include "web/screens/dates.h"
#include "web/screens/desk_words.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using exchange::DayTally;

std::string count_words(const App& app, std::int64_t count) {
  const auto shown = exchange::shown_count(count);
  return shown ? std::to_string(*shown) : app.say("desk/hidden");
}

kit::BarTable table_of(const App& app, const DayTally::Family& counted) {
  kit::BarTable table{.id = "today-" + counted.id, .name = family_name(app, counted.id)};
  table.heads = {app.say("desk/col/technique"), app.say("desk/col/not-yet"),
                 app.say("desk/col/of")};
  for (const auto& technique : app.content.family(counted.id)->course->family.techniques) {
    const auto k = exchange::shown_count(exchange::not_yet(counted, technique.id));
    if (!k) continue;
    kit::BarRow row{.id = counted.id + '-' + technique.id};
    row.label = app.tell_of(counted.id, "techniques/" + technique.id + "/name");
    const double share = static_cast<double>(*k) / static_cast<double>(counted.checks);
    row.bars = {{.share = share}};
    row.cells = {std::to_string(*k), std::to_string(counted.checks)};
    row.words = {kit::fill(app.say("kiosk/of"), {{"k", row.cells[0]}, {"n", row.cells[1]}})};
    table.rows.push_back(std::move(row));
  }
  return table;
}

void draw_today(App& app) {
  kit::Ui& ui = *app.ui;
  kit::heading(ui, "today", app.say("kiosk/today"), kit::Heading::section);
  const DayTally& tally = app.kiosk.tally;
  const bool is_today = tally.day == shell::today();
  for (const DayTally::Family& counted : tally.families) {
    if (!is_today) break;
    kit::paragraph(
        ui, "checks-" + counted.id,
        kit::fill(app.say("kiosk/checks"), {{"name", family_name(app, counted.id)},
                                            {"count", count_words(app, counted.checks)}}));
    const kit::BarTable table = table_of(app, counted);
    if (!table.rows.empty()) kit::bar_table(ui, table);
  }
  if (!is_today || tally.families.empty()) kit::paragraph(ui, "none", app.say("kiosk/none"));
  kit::caption(ui, "few", app.say("kiosk/few"));
}

std::string today_csv(const App& app) {
  exchange::Csv csv;
  for (const char* head :
       {"desk/col/day", "desk/col/kind", "desk/col/technique", "desk/col/not-yet", "desk/col/of"})
    csv.text(app.say(head));
  csv.end_row();
  const DayTally& tally = app.kiosk.tally;
  for (const DayTally::Family& counted : tally.families) {
    for (const kit::BarRow& row : table_of(app, counted).rows) {
      csv.text(day_words(app, tally.day)).text(counted.id).text(row.label);
      csv.number(std::int64_t{std::stoll(row.cells[0])}).number(counted.checks).end_row();
    }
  }
  return csv.str();
}

void draw_health(App& app) {
  constexpr std::array k_lines = {"kiosk/minutes", "kiosk/memory", "kiosk/visits", "kiosk/late",
                                  "kiosk/failures"};
  kit::heading(*app.ui, "health", app.say("kiosk/health"), kit::Heading::section);
  std::string_view numbers = app.kiosk.health;
  std::vector<std::string> lines;
  for (const char* line : k_lines) {
    if (numbers.empty()) break;
    const std::size_t end = std::min(numbers.find('\n'), numbers.size());
    lines.push_back(kit::fill(app.say(line), {{"count", std::string(numbers.substr(0, end))}}));
    numbers.remove_prefix(std::min(end + 1, numbers.size()));
  }
  const std::string offline = shell::launch_option(shell::k_option_offline);
  if (!offline.empty()) lines.push_back(app.say("about/offline"));
  lines.push_back(
      kit::fill(app.say("about/version"), {{"id", shell::launch_option(shell::k_option_build)}}));
  kit::bullets(*app.ui, "health-list", lines);
}

void tell(App& app, const char* path) {
  app.kiosk.told = path;
  app.ui->say(app.say(path));
  shell::redraw();
}

void save_today(App& app) {
  const std::string words =
      "rehale-" + day_words(app, app.kiosk.tally.day) + ".csv\n" + today_csv(app);
  shell::ask_page("save", words, [&app](const Result<std::string>& done) {
    tell(app, done ? "hand/saved" : "hand/not-done");
  });
}

void forget_today(App& app) {
  app.kiosk.tally = {};
  shell::ask_page(shell::k_ask_keep, "counted\n", [&app](const Result<std::string>& done) {
    tell(app, done ? "kiosk/deleted" : "hand/not-done");
  });
}

}  // namespace

// The page asks for the code (web/js/kiosk.js); the first one given is the one that counts.
void ask_staff(App& app) {
  std::string words;
  for (const char* key :
       {"kiosk/code-title", "kiosk/code-lead", "kiosk/code-new", "kiosk/code-wrong",
        "kiosk/code-go", "kiosk/code-back", "kiosk/code-erase"})
    words += app.say(key) + '\n';
  shell::ask_page("kioskStaff", words, [&app](const Result<std::string>& answer) {
    if (!answer || *answer != "yes") return;
    app.kiosk.told.clear();
    app.load_families([&app] {
      app.where = Where::kiosk_staff;
      shell::redraw();
    });
    shell::ask_page("kioskHealth", "", [&app](const Result<std::string>& numbers) {
      if (numbers) app.kiosk.health = *numbers;
      shell::redraw();
    });
  });
}

void draw_kiosk_staff(App& app) {
  kit::Ui& ui = *app.ui;
  const auto top = kit::begin_screen(
      ui, {.id = "kiosk-staff", .title = app.say("kiosk/staff"), .back = true, .help = false});
  kit::heading(ui, "title", app.say("kiosk/staff"));
  if (!app.kiosk.told.empty()) kit::status_line(ui, "told", app.say(app.kiosk.told));
  const bool clean = kit::quiet_button(ui, {.id = "clean", .label = app.say("kiosk/clean")});
  draw_today(app);
  const bool save = kit::quiet_button(ui, {.id = "save", .label = app.say("kiosk/save")});
  const bool forget = kit::quiet_button(ui, {.id = "forget", .label = app.say("kiosk/delete")});
  kit::heading(ui, "begin", app.say("kiosk/begin"), kit::Heading::section);
  kit::paragraph(ui, "begin-how", app.say("kiosk/begin-how"));
  const bool keep = kit::quiet_button(ui, {.id = "set-up", .label = app.say("kiosk/set-up")});
  draw_health(app);
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "leave", .label = app.say("kiosk/leave")}, .quiet = {}});
  if (save) save_today(app);
  if (forget) forget_today(app);
  if (keep) app.set_up_kiosk();
  if (clean) {
    app.kiosk.clean_until_ms = ui.now_ms() + k_cleaning_ms;
    app.where = Where::kiosk_clean;
  }
  if (pressed == kit::ActionPress::main || top == kit::TopPress::back) app.end_kiosk_visit();
}

}  // namespace rehale::screens
