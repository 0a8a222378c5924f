// "Where it goes": this puff beside a good one as 100 dots each, what differs in words, and
// controls to see cause and effect. A teaching estimate, never a measurement, and said so.
#include <algorithm>
#include <cmath>

#include "core/advice/dose_word.h"
#include "core/dose/dots.h"
#include "web/screens/screens.h"
#include "web/screens/where_controls.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using Dots = std::array<int, dose::k_places>;

constexpr std::array<const char*, dose::k_places> k_place_ids{"device", "mouth", "airways", "lungs",
                                                              "out"};

dose::Technique within_range(dose::Technique t) {
  t.flow_l_per_min = dose::k_flow_l_per_min.clamp(t.flow_l_per_min);
  t.inspired_ml = dose::k_inspired_ml.clamp(t.inspired_ml);
  t.press_s = dose::k_press_s.clamp(t.press_s);
  t.hold_s = dose::k_hold_s.clamp(t.hold_s);
  t.exhale_l_per_min = dose::k_flow_l_per_min.clamp(t.exhale_l_per_min);
  t.vents_covered = dose::k_vents_covered.clamp(t.vents_covered);
  t.frc_ml = dose::k_frc_ml.clamp(t.frc_ml);
  return t;
}

void work_out(WhereItGoes& where) {
  auto compared = dose::compare(where.yours, where.good);
  if (compared) where.result = *compared;  // always: the numbers are within range
}

Dots dots_of(const dose::Outcome& outcome) { return dose::hundred_dots(outcome.likely); }

std::string share_sentence(const App& app, const WhereItGoes& where) {
  const double share = where.result.share.likely;
  return app.say("where/share/" + std::string(advice::share_word(share)));
}

int lung_dots(const Dots& dots) { return dots[2] + dots[3]; }

// "About 9 of 100 dots. It could be 5 to 14." The dots of the picture, and never outside the band.
std::string lung_sentence(const App& app, const WhereItGoes& where) {
  const dose::Band& lung = where.result.yours.lung;
  const int likely = lung_dots(dots_of(where.result.yours));
  const auto low = std::min<long>(likely, std::lround(100 * lung.low));
  const auto high = std::max<long>(likely, std::lround(100 * lung.high));
  return kit::fill(app.say("where/lung-band"), {{"likely", std::to_string(likely)},
                                                {"low", std::to_string(low)},
                                                {"high", std::to_string(high)}});
}

// What stays in view: the one number, and what it is.
std::string pinned_sentence(const App& app, const WhereItGoes& where) {
  const int likely = lung_dots(dots_of(where.result.yours));
  return kit::fill(app.say("where/pinned"), {{"likely", std::to_string(likely)}});
}

// The places that differ by 3 dots or more, most first by place.
std::vector<std::string> differences(const App& app, const Dots& yours, const Dots& good) {
  std::vector<std::string> lines;
  for (std::size_t n = 0; n < yours.size(); ++n) {
    const int more = yours[n] - good[n];
    if (std::abs(more) < 3) continue;
    const std::string way = more > 0 ? "where/more/" : "where/less/";
    lines.push_back(app.say(way + k_place_ids[n]));
  }
  return lines;
}

std::string picture_words(const App& app, const Dots& yours, const Dots& good) {
  const auto told = [&](const char* whose, const Dots& dots) {
    std::string words = app.say(whose) + ": ";
    for (std::size_t n = 0; n < dots.size(); ++n) {
      words += (n > 0 ? ", " : "") + app.say(std::string("where/place/") + k_place_ids[n]) + " " +
               std::to_string(dots[n]);
    }
    return words + ". ";
  };
  return told("where/yours", yours) + told("where/good", good) + app.say("where/estimate");
}

void draw_picture(App& app, const Dots& yours, const Dots& good) {
  kit::Bodies bodies{{{app.say("where/yours"), yours}, {app.say("where/good"), good}},
                     app.say("where/estimate")};
  kit::picture(*app.ui,
               {.id = "picture",
                .alternative = picture_words(app, yours, good),
                .draw = [bodies = std::move(bodies)](
                            kit::Ui& ui, kit::Rect at) { kit::draw_bodies(ui, at, bodies); },
                .aspect = 1.45F,
                .least_px = std::min(420.0F, app.ui->height_px() * .41F)});
}

void draw_table(App& app, const Dots& yours, const Dots& good) {
  kit::DotsTable table{
      .id = "table",
      .name = app.say("where/table"),
      .heads = {app.say("where/place/head"), app.say("where/yours"), app.say("where/good")},
      .places = {},
      .columns = {yours, good}};
  for (std::size_t n = 0; n < table.places.size(); ++n) {
    table.places[n] = app.say(std::string("where/place/") + k_place_ids[n]);
  }
  kit::dots_table(*app.ui, table);
}

// What the result leans on, and the sources of the model.
void draw_doubts(App& app, WhereItGoes& where) {
  kit::Ui& ui = *app.ui;
  where.open_doubts =
      kit::disclosure(ui, {.id = "doubts", .label = app.say("where/doubts")}, where.open_doubts);
  if (!where.open_doubts) return;
  std::vector<std::string> weak;
  for (int n = 0; n < dose::k_leans; ++n) {
    const auto lean = static_cast<dose::Lean>(n);
    if (where.result.yours.leans.has(lean)) {
      weak.push_back(app.say("where/lean/" + std::string(dose::id_of(lean))));
    }
  }
  kit::bullets(ui, "weak", weak);
  kit::heading(ui, "sources-title", app.say("where/sources"), kit::Heading::section);
  const FamilyContent* family = app.content.family(app.picked());
  std::vector<std::string> lines;
  for (const auto& key : family->course->family.dose.sources) {
    const auto found = app.content.library().sources.find(key);
    if (found != app.content.library().sources.end()) lines.push_back(key + ": " + found->second);
  }
  kit::bullets(ui, "sources", lines);
}

void draw_words(App& app, WhereItGoes& where, const Dots& yours, const Dots& good) {
  kit::Ui& ui = *app.ui;
  kit::heading(ui, "title", app.say("where/title"));
  kit::status_line(ui, "share", share_sentence(app, where));
  kit::paragraph(ui, "band", lung_sentence(app, where));
  const dose::Leans& leans = where.result.yours.leans;
  if (leans.has(dose::Lean::breathed_in) || leans.has(dose::Lean::vents) ||
      leans.has(dose::Lean::loaded_twice)) {
    kit::notice(ui, "assumed", app.say("where/assumed"));
  }
  const auto differs = differences(app, yours, good);
  if (!differs.empty()) kit::bullets(ui, "differs", differs);
  draw_table(app, yours, good);
  kit::caption(ui, "estimate", app.say("where/limits"));
}

}  // namespace

void App::to_where_it_goes(const std::optional<dose::Technique>& puff) {
  const FamilyContent* family = content.family(picked_);
  const auto good = family == nullptr ? std::nullopt : advice::good_puff(family->course->family);
  if (!good) return;
  where_it_goes = {.yours = within_range(puff.value_or(*good)), .good = *good, .back = where};
  work_out(where_it_goes);
  where = Where::where_it_goes;
}

void draw_where_it_goes(App& app) {
  kit::Ui& ui = *app.ui;
  WhereItGoes& where = app.where_it_goes;
  const auto top =
      kit::begin_screen(ui, {.id = "where-it-goes", .title = app.say("where/title"), .back = true});
  const Dots yours = dots_of(where.result.yours);
  const Dots good = dots_of(where.result.good);
  draw_picture(app, yours, good);
  draw_words(app, where, yours, good);
  const dose::Technique next = draw_where_controls(app, where.yours);
  draw_doubts(app, where);
  const auto pressed =
      kit::end_screen(ui, {.main = {.id = "close", .label = app.say("where/close")},
                           .quiet = {.id = "good", .label = app.say("where/reset")},
                           .note = pinned_sentence(app, where)});
  if (!(next == where.yours)) {
    where.yours = next;
    work_out(where);
    shell::redraw();
  }
  if (pressed == kit::ActionPress::quiet) {
    where.yours = where.good;
    work_out(where);
  }
  if (top == kit::TopPress::help) return app.to_about();
  if (pressed == kit::ActionPress::main || top == kit::TopPress::back) app.where = where.back;
}

}  // namespace rehale::screens
