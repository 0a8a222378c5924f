// After a run-through: what it comes to, the times over what is wanted, what to mend.
#include <algorithm>

#include "core/advice/dose_word.h"
#include "core/catalog/lookup.h"
#include "core/rehearsal/puff.h"
#include "web/screens/rehearsal_words.h"
#include "web/screens/run_parts.h"

namespace rehale::screens {

namespace {

constexpr int k_at_a_time = 3;

std::vector<catalog::Id> techniques(const App& app, bool met) {
  std::vector<catalog::Id> ids;
  const auto& all = app.rehearsed_family().techniques;
  for (const auto& shown : app.rehearsal.account().shown) {
    if (shown.met == met) ids.push_back(all[static_cast<std::size_t>(shown.technique)].id);
  }
  // What matters most for the dose first.
  std::ranges::stable_sort(ids, std::greater<>{}, [&](const catalog::Id& id) {
    const auto* technique = catalog::find(all, id);
    return technique->weight + (technique->critical ? 1 : 0);
  });
  return ids;
}

void draw_to_mend(App& app, const std::vector<catalog::Id>& missed) {
  kit::Ui& ui = *app.ui;
  for (int n = 0; n < std::min(k_at_a_time, static_cast<int>(missed.size())); ++n) {
    const catalog::Id& technique = missed[static_cast<std::size_t>(n)];
    const std::string id = "mend-" + technique, path = "techniques/" + technique;
    kit::begin_card(ui, {.id = id, .tone = kit::Tone::to_mend});
    kit::heading(ui, id + "-name", app.tell(path + "/name"), kit::Heading::section);
    const auto lines = missed_lines(app, technique);
    for (std::size_t k = 0; k < lines.size(); ++k)
      kit::paragraph(ui, id + "-line-" + std::to_string(k), lines[k]);
    kit::paragraph(ui, id + "-remedy", app.tell(path + "/remedy"));
    kit::end_card(ui);
  }
  if (static_cast<int>(missed.size()) > k_at_a_time)
    kit::paragraph(ui, "more", app.say("run/more"), kit::Ink::soft);
}

void draw_well(App& app, const std::vector<catalog::Id>& met) {
  if (met.empty()) return;
  std::vector<std::string> lines;
  lines.reserve(met.size());
  for (const catalog::Id& id : met) lines.push_back(app.tell("techniques/" + id + "/has"));
  kit::begin_card(*app.ui, {.id = "well", .tone = kit::Tone::going_well});
  kit::bullets(*app.ui, "well-list", lines);
  kit::end_card(*app.ui);
}

// "Shake it, for 5.2 seconds", in the order they were started.
void draw_done_list(App& app) {
  kit::Ui& ui = *app.ui;
  const auto& acts = app.rehearsal.account().acts;
  if (acts.empty()) return;
  app.rehearsal_list = kit::disclosure(ui, {"did", app.say("run/did-list")}, app.rehearsal_list);
  if (!app.rehearsal_list) return;
  std::vector<std::string> lines;
  for (const auto& act : acts) {
    std::string line = step_words(app, act.step);
    if (act.end_ms > act.start_ms) {
      const std::string s =
          kit::fill(app.ui->words().timer_result,
                    {{"seconds", seconds_words(app, (act.end_ms - act.start_ms) / 1000)}});
      line += ", " + kit::fill(app.say("run/for"), {{"seconds", s}});
    }
    lines.push_back(std::move(line));
  }
  kit::bullets(ui, "did-list", lines);
}

// The technique of the first dose as the dose model takes it; nothing where it has no such device.
std::optional<dose::Technique> puff_of(const App& app) {
  const auto& family = app.rehearsed_family();
  const auto good = advice::good_puff(family);
  if (!good) return std::nullopt;
  return rehearsal::first_puff(family, app.rehearsal.account(), good->device);
}

}  // namespace

void draw_run_told(App& app) {
  kit::Ui& ui = *app.ui;
  const auto missed = techniques(app, false), met = techniques(app, true);
  const auto top = kit::begin_screen(ui, {.id = "run",
                                          .visit = "told-" + std::to_string(app.rehearsal.tries()),
                                          .title = app.say("run/told"),
                                          .back = true});
  kit::heading(ui, "title", app.say("run/told"));
  const char* lead = !missed.empty()   ? "run/lead-mend"
                     : met.size() >= 3 ? "run/lead-well"
                                       : "run/lead-little";
  kit::paragraph(ui, "lead", app.say(lead));
  kit::bullets(ui, "doses", dose_lines(app));
  draw_to_mend(app, missed);
  const auto rows = time_rows(app);
  if (!rows.empty()) {
    kit::heading(ui, "times-title", app.say("run/times"), kit::Heading::section);
    kit::spans(ui, "times", rows);
  }
  draw_well(app, met);
  draw_done_list(app);
  const auto puff = puff_of(app);
  const bool where = puff && kit::quiet_button(ui, {.id = "where", .label = app.say("where/see")});
  kit::caption(ui, "honest", app.say("run/honest"));
  if (app.rehearsal.take().guided) kit::caption(ui, "guided", app.say("run/guided"));
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "again", .label = app.say("run/again")},
                           .quiet = {.id = "leave", .label = app.say("run/leave")}});
  if (top == kit::TopPress::help) return app.to_about();
  if (where) return app.to_where_it_goes(puff);
  if (pressed == kit::ActionPress::main) return app.rehearsal.again();
  if (top == kit::TopPress::back || pressed == kit::ActionPress::quiet) app.leave_run_through();
}

}  // namespace rehale::screens
