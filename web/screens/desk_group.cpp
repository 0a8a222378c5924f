// The group: what to teach again first, before and after on the same people, and how the questions
// work. Bars with intervals; the same numbers stand in a table for readers and in files.
#include <algorithm>

#include "web/screens/desk_tables.h"
#include "web/screens/desk_words.h"
#include "web/screens/screens.h"
#include "web/shell/short_decimal.h"

namespace rehale::screens {

namespace {

const char* title_of(DeskView view) {
  switch (view) {
    case DeskView::teach:
      return "desk/teach-title";
    case DeskView::change:
      return "desk/change-title";
    case DeskView::items:
      break;
  }
  return "desk/items-title";
}

// The educator's own order: what is pressed comes first, what was pressed before it next.
void draw_order(App& app) {
  kit::Ui& ui = *app.ui;
  Desk& desk = app.desk;
  desk.order_open =
      kit::disclosure(ui, {.id = "order", .label = app.say("desk/own-order")}, desk.order_open);
  if (!desk.order_open) return;
  const catalog::Family& family = desk.intake.course(desk.filter.family)->family;
  for (std::size_t k = 0; k < family.techniques.size(); ++k) {
    const std::string label =
        kit::fill(app.say("desk/put-first"), {{"name", technique_name(app, family, k)}});
    if (!kit::quiet_button(ui, {.id = "first-" + std::to_string(k), .label = label})) continue;
    std::erase(desk.first, k);
    desk.first.insert(desk.first.begin(), k);
    ui.say(label);
  }
  if (!desk.first.empty() &&
      kit::quiet_button(ui, {.id = "as-worked-out", .label = app.say("desk/as-worked-out")}))
    desk.first.clear();
}

void draw_teach(App& app) {
  kit::Ui& ui = *app.ui;
  const Desk& desk = app.desk;
  kit::caption(ui, "key-how", app.say(desk.first.empty() ? "desk/key-how" : "desk/own-how"));
  kit::bar_table(ui, teach_table(app));
  draw_order(app);
  const auto table = cohort::technique_table(desk.summary(), desk.filter);
  const auto course = desk.intake.course(desk.filter.family);
  std::vector<std::string> rules;
  for (std::size_t b = 0; b < table.held.size(); ++b) {
    const cohort::Share& share = table.held[b];
    if (share.hidden || share.k == 0) continue;
    const std::string& name = app.tell_of(
        desk.filter.family, "misconceptions/" + course->family.misconceptions[b].id + "/name");
    rules.push_back(kit::fill(
        app.say("desk/rule-held"),
        {{"name", name}, {"k", std::to_string(share.k)}, {"n", std::to_string(share.n)}}));
  }
  if (rules.empty()) return;
  kit::heading(ui, "rules-title", app.say("desk/rules"), kit::Heading::section);
  kit::bullets(ui, "rules", rules);
}

void draw_change(App& app) {
  kit::caption(*app.ui, "change-how", app.say("desk/change-how"));
  kit::bar_table(*app.ui, change_table(app));
}

void draw_items(App& app) {
  kit::Ui& ui = *app.ui;
  const auto alpha = cohort::reliability(app.desk.summary(), app.desk.filter.family);
  kit::caption(ui, "items-how", app.say("desk/items-how"));
  kit::paragraph(
      ui, "alpha",
      alpha ? kit::fill(app.say("desk/alpha"), {{"alpha", shell::short_decimal(*alpha, 2)}})
            : app.say("desk/no-alpha"));
  kit::bar_table(ui, items_table(app));
}

// Other tables, and this one as a file.
void draw_ways(App& app) {
  kit::Ui& ui = *app.ui;
  Desk& desk = app.desk;
  const std::string name = "rehale-" + desk.filter.family;
  if (desk.view == DeskView::teach) {
    if (kit::quiet_button(ui, {.id = "save-order", .label = app.say("desk/save-order")}))
      save_from_desk(app, name + "-order.csv", teach_csv(app));
    if (kit::quiet_button(ui, {.id = "save-techniques", .label = app.say("desk/save-techniques")}))
      save_from_desk(app, name + "-techniques.csv", techniques_csv(app));
    if (kit::quiet_button(ui, {.id = "save-results", .label = app.say("desk/save-results")}))
      save_from_desk(app, name + "-results.csv", results_csv(app));
  } else if (kit::quiet_button(ui, {.id = "save-table", .label = app.say("desk/save-table")})) {
    const bool change = desk.view == DeskView::change;
    save_from_desk(app, name + (change ? "-before-after.csv" : "-questions.csv"),
                   change ? change_csv(app) : items_csv(app));
  }
  if (!desk.told.empty()) kit::paragraph(ui, "told", app.say(desk.told));
  kit::heading(ui, "more-title", app.say("desk/more"), kit::Heading::section);
  for (const DeskView view : {DeskView::teach, DeskView::change, DeskView::items}) {
    if (view == desk.view) continue;
    const std::string id = "view-" + std::to_string(static_cast<int>(view));
    if (!kit::quiet_button(ui, {.id = id, .label = app.say(title_of(view))})) continue;
    desk.view = view;
    desk.filter_open = desk.order_open = false;
    desk.told.clear();
  }
}

void draw_view(App& app) {
  switch (app.desk.view) {
    case DeskView::teach:
      return draw_teach(app);
    case DeskView::change:
      return draw_change(app);
    case DeskView::items:
      return draw_items(app);
  }
}

}  // namespace

void draw_desk_group(App& app) {
  kit::Ui& ui = *app.ui;
  Desk& desk = app.desk;
  const std::string title = app.say(title_of(desk.view));
  const auto top = kit::begin_screen(ui, {.id = "desk-group",
                                          .visit = std::to_string(static_cast<int>(desk.view)),
                                          .title = title,
                                          .back = true});
  kit::heading(ui, "title", title);
  kit::paragraph(ui, "kind", family_name(app, desk.filter.family));
  kit::caption(ui, "origin", app.say("desk/origin"));
  draw_desk_filter(app, {});
  const auto counted = std::ranges::count_if(desk.intake.records(), [&desk](const auto& record) {
    return record.family == desk.filter.family && desk.lets_through(record);
  });
  kit::status_line(ui, "count",
                   kit::fill(app.say("desk/checks"), {{"count", std::to_string(counted)}}));
  kit::caption(ui, "hidden-how", app.say("desk/hidden-how"));
  draw_view(app);
  draw_ways(app);
  kit::end_screen(ui);
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) {
    desk.told.clear();
    app.where = Where::desk_read;
  }
}

}  // namespace rehale::screens
