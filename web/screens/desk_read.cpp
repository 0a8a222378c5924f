// Read results: a window of the page takes what was pasted, picked or scanned; its pieces are read
// between frames, with progress, and what could not be read is told with its line and why.
#include <algorithm>
#include <utility>

#include "web/screens/desk_words.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

void read_on(App& app) {
  shell::ask_page_at_once("deskNext", std::to_string(app.desk.portions.letters()),
                          [&app, heap = app.desk.heap()](const Result<std::string>& piece) {
                            if (heap != app.desk.heap()) return;  // stopped
                            const double from_ms = shell::now_ms();
                            if (!piece || !app.desk.take(*piece)) {
                              app.desk.end_reading();
                              return shell::redraw(1, "desk has read");
                            }
                            if (app.desk.portions.took(from_ms, shell::now_ms()))
                              shell::redraw(1, "desk reads");
                            read_on(app);
                          });
}

void begin(App& app) {
  app.load_families([&app] {
    exchange::Intake::Courses courses;
    for (const catalog::Id& family : app.content.library().families) {
      courses.push_back(app.content.family(family)->course);
    }
    app.desk.begin_reading(std::move(courses));
    read_on(app);
    shell::redraw();
  });
}

void ask_for_results(App& app) {
  std::string words;
  for (const char* part :
       {"title", "text", "files", "drop", "go", "cancel", "pasted", "picked", "scan"}) {
    words += app.say(std::string("desk/paste/") + part) + '\n';
  }
  for (const char* part : {"title", "lead", "wait", "ready", "count", "private", "stop", "source",
                           "refused", "none", "busy", "not-here"}) {
    words += app.say(std::string("desk/scan/") + part) + '\n';
  }
  words += app.say("desk/why/offline");
  shell::ask_page("deskAsk", words, [&app](const Result<std::string>& answer) {
    if (!answer) app.desk.told = "hand/not-done";
    if (answer && *answer == "read") begin(app);
    shell::redraw();
  });
}

std::string counted(const App& app, const char* path, std::size_t count) {
  return kit::fill(app.say(path), {{"count", std::to_string(count)}});
}

void draw_unread(App& app) {
  kit::Ui& ui = *app.ui;
  const exchange::Intake& intake = app.desk.intake;
  if (intake.unread_count() == 0) return;
  app.desk.unread_open = kit::disclosure(
      ui, {.id = "unread", .label = counted(app, "desk/got/unread", intake.unread_count())},
      app.desk.unread_open);
  if (!app.desk.unread_open) return;
  std::vector<std::string> lines;
  for (const exchange::Unread& item : intake.unread()) lines.push_back(unread_words(app, item));
  if (lines.size() < intake.unread_count()) {
    lines.push_back(counted(app, "desk/got/more", intake.unread_count() - lines.size()));
  }
  kit::bullets(ui, "unread-list", lines);
}

void draw_got(App& app) {
  kit::Ui& ui = *app.ui;
  const exchange::Intake& intake = app.desk.intake;
  kit::status_line(ui, "got", counted(app, "desk/got/read", intake.records().size()));
  const auto made_up = std::ranges::count_if(intake.records(), &cohort::Record::made_up);
  const std::size_t not_opened = std::min(app.desk.not_opened(), intake.sealed_count());
  std::vector<std::string> lines;
  const std::pair<const char*, std::size_t> counts[] = {
      {"desk/got/copies", intake.copies()},
      {"desk/got/sealed", intake.sealed_count() - not_opened},
      {"desk/got/not-opened", not_opened},
      {"desk/got/without", intake.lines_without()},
      {"desk/got/made-up", static_cast<std::size_t>(made_up)}};
  for (const auto& [path, count] : counts) {
    if (count > 0) lines.push_back(counted(app, path, count));
  }
  if (!lines.empty()) kit::bullets(ui, "counts", lines);
  draw_sealed(app);
  draw_unread(app);
}

// True: stop was pressed.
bool draw_working(App& app) {
  kit::Ui& ui = *app.ui;
  const std::string count = std::to_string(app.desk.intake.records().size());
  if (app.desk.work() == Desk::Work::adding) {
    kit::paragraph(ui, "working", kit::fill(app.say("desk/adding"), {{"count", count}}));
    return false;
  }
  kit::paragraph(
      ui, "working",
      kit::fill(app.say(app.desk.work() == Desk::Work::opening ? "desk/opening" : "desk/reading"),
                {{"percent", std::to_string(app.desk.percent())}, {"count", count}}));
  return kit::quiet_button(ui, {.id = "stop", .label = app.say("desk/stop")});
}

void draw_ways(App& app) {
  kit::Ui& ui = *app.ui;
  if (app.desk.intake.records().empty()) return;
  app.desk.filter_open = app.desk.order_open = false;
  if (kit::quiet_button(ui, {.id = "group", .label = app.say("desk/group")}))
    app.where = Where::desk_group;
  if (kit::quiet_button(ui, {.id = "people", .label = app.say("desk/people")}))
    app.where = Where::desk_people;
  if (kit::text_button(ui, {.id = "clear", .label = app.say("desk/clear")})) app.desk.clear();
}

void work_on(App& app) {
  if (app.desk.work() != Desk::Work::adding) return;
  if (!app.desk.add_up()) {
    app.ui->say(counted(app, "desk/got/read", app.desk.intake.records().size()));
  }
  shell::redraw(2, "desk adds up");
}

}  // namespace

void draw_desk_read(App& app) {
  kit::Ui& ui = *app.ui;
  work_on(app);
  const bool idle = app.desk.work() == Desk::Work::none;
  const auto top =
      kit::begin_screen(ui, {.id = "desk-read", .title = app.say("desk/read"), .back = true});
  kit::heading(ui, "title", app.say("desk/read"));
  kit::paragraph(ui, "lead", app.say("desk/read-lead"));
  const bool empty = app.desk.intake.records().empty() && app.desk.intake.unread_count() == 0 &&
                     app.desk.intake.sealed_count() == 0 && app.desk.intake.lines_without() == 0;
  bool stop = false;
  if (!idle) {
    stop = draw_working(app);
  } else if (!empty) {
    draw_got(app);
    draw_ways(app);
  }
  if (!app.desk.told.empty()) kit::paragraph(ui, "told", app.say(app.desk.told));
  kit::Actions actions;
  if (idle) actions.main = {.id = "add", .label = app.say(empty ? "desk/add" : "desk/add-more")};
  const auto pressed = kit::end_screen(ui, actions);
  const bool leave = top == kit::TopPress::back;
  if ((stop || leave) && app.desk.work() == Desk::Work::reading) app.desk.end_reading();
  if ((stop || leave) && app.desk.work() == Desk::Work::opening) stop_opening(app);
  if (pressed == kit::ActionPress::main) ask_for_results(app);
  if (stop) shell::redraw();
  if (top == kit::TopPress::help) return app.to_about();
  if (leave) app.where = Where::desk;
}

}  // namespace rehale::screens
