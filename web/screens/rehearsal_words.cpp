#include "web/screens/rehearsal_words.h"

#include <algorithm>
#include <cmath>

#include "core/catalog/lookup.h"
#include "web/shell/short_decimal.h"

namespace rehale::screens {

namespace {

using catalog::Criterion;
using catalog::Measure;
using rehearsal::Finding;
using rehearsal::Why;

const Criterion* criterion_of(const App& app, const Finding& finding) {
  return catalog::find(app.rehearsed_family().criteria, finding.criterion);
}

Measure measure_of(const App& app, const Finding& finding) {
  const auto& timed = app.rehearsed_family().run_through.timed;
  const auto found = std::ranges::find_if(timed, [&](const auto& one) {
    return one.criterion == finding.criterion && catalog::index_of(one.steps, finding.step) >= 0;
  });
  return found == timed.end() ? Measure::lasts : found->measure;
}

// "3 to 5", "5 or more", "10": of the target, else of what passes.
std::string aim_words(const App& app, const Criterion& c) {
  const auto low = c.target_low ? c.target_low : c.pass_low;
  const auto high = c.target_low || c.target_high ? c.target_high : c.pass_high;
  if (low && high && *low < *high) {
    return kit::fill(app.say("run/aim-between"),
                     {{"low", seconds_words(app, *low)}, {"high", seconds_words(app, *high)}});
  }
  if (low && high) return kit::fill(app.say("run/aim-about"), {{"low", seconds_words(app, *low)}});
  return kit::fill(app.say("run/aim-least"), {{"low", seconds_words(app, low.value_or(0))}});
}

std::string after_start_words(const App& app, const Finding& finding, const Criterion& c) {
  const std::string& pattern = app.say(finding.value < 0 ? "run/before-breath" : "run/into-breath");
  return kit::fill(pattern, {{"value", seconds_words(app, std::abs(finding.value))},
                             {"high", seconds_words(app, c.pass_high.value_or(1))}});
}

// How telling a finding is; the least first.
int rank(const Finding& finding) { return static_cast<int>(finding.why); }

// The wanted step of this technique that was never done; nullptr: they all were.
const catalog::RunStep* never_done(const App& app, const catalog::Id& technique) {
  const auto& family = app.rehearsed_family();
  const auto& acts = app.rehearsal.account().acts;
  for (const auto& id : rehearsal::wanted_steps(family, app.rehearsal.take().doses)) {
    const auto* step = catalog::find(family.run_through.steps, id);
    const bool done = std::ranges::find(acts, id, &rehearsal::Act::step) != acts.end();
    if (step != nullptr && step->technique == technique && !done) return step;
  }
  return nullptr;
}

std::string line_of(const App& app, const Finding& finding) {
  const std::string& step = step_words(app, finding.step);
  switch (finding.why) {
    case Why::measured:
      return step + ": " + measured_words(app, finding);
    case Why::order:
      return kit::fill(app.say("run/too-early"), {{"step", step}}) + ' ' +
             app.tell("rules/" + finding.rule);
    case Why::left_out:
      return kit::fill(app.say("told/left-out"), {{"answer", step}});
    case Why::betrayed:
      return kit::fill(app.say("told/chose"), {{"answer", step}});
    case Why::waste:
      return app.say("run/dose-lost-here") + ' ' + step + '.';
    case Why::need:
      break;
  }
  const auto* left_out = never_done(app, finding.technique);
  if (left_out != nullptr)
    return kit::fill(app.say("told/left-out"), {{"answer", step_words(app, left_out->id)}});
  return app.tell("techniques/" + finding.technique + "/lacks");
}

}  // namespace

const std::string& step_words(const App& app, const catalog::Id& step) {
  const std::string& own = app.tell("steps/" + step);
  return own.empty() ? app.tell("actions/" + step + "/label") : own;
}

std::string seconds_words(const App& app, double s) {
  return kit::decimal_words(app.ui->words(), shell::short_decimal(s, 1));
}

std::string measured_words(const App& app, const Finding& finding) {
  const Criterion* c = criterion_of(app, finding);
  if (c == nullptr) return {};
  const std::string value = seconds_words(app, finding.value);
  switch (measure_of(app, finding)) {
    case Measure::lasts:
      return kit::fill(app.say("run/lasted"), {{"value", value}, {"aim", aim_words(app, *c)}});
    case Measure::after_start_of:
      return after_start_words(app, finding, *c);
    case Measure::after_end_of:
      return kit::fill(app.say("run/after"), {{"value", value}});
    case Measure::count_in:
      break;
  }
  return kit::fill(app.say("run/count"), {{"value", value}});
}

std::vector<std::string> missed_lines(const App& app, const catalog::Id& technique) {
  std::vector<const Finding*> missed;
  for (const Finding& finding : app.rehearsal.account().findings) {
    if (!finding.met && finding.technique == technique) missed.push_back(&finding);
  }
  std::ranges::stable_sort(missed, {}, [](const Finding* one) { return rank(*one); });
  std::vector<std::string> lines;
  for (const Finding* finding : missed) {
    std::string line = line_of(app, *finding);
    if (lines.size() < 2 && std::ranges::find(lines, line) == lines.end())
      lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<std::string> dose_lines(const App& app) {
  const auto& doses = app.rehearsal.account().report.state.doses;
  std::vector<std::string> lines;
  const auto add = [&](int count, const char* one, const char* many) {
    if (count == 1) lines.push_back(app.say(one));
    if (count > 1) lines.push_back(kit::fill(app.say(many), {{"doses", std::to_string(count)}}));
  };
  add(doses.inhaled, "run/dose-one", "run/dose-many");
  add(doses.wasted, "run/lost-one", "run/lost-many");
  if (lines.empty()) lines.push_back(app.say("run/dose-none"));
  return lines;
}

std::vector<kit::Span> time_rows(const App& app) {
  std::vector<kit::Span> rows;
  for (const Finding& finding : app.rehearsal.account().findings) {
    const Criterion* c = criterion_of(app, finding);
    if (finding.why != Why::measured || c == nullptr) continue;
    const Measure measure = measure_of(app, finding);
    if (measure == Measure::count_in) continue;
    kit::Span row{.id = std::to_string(rows.size()),
                  .label = step_words(app, finding.step),
                  .words = measured_words(app, finding),
                  .met = finding.met,
                  .moment = measure != Measure::lasts,
                  .value = finding.value};
    row.low = c->pass_low.value_or(0);
    row.high = c->pass_high.value_or(INFINITY);
    const double reach = std::isinf(row.high) ? 2 * c->target_high.value_or(row.low) : row.high;
    row.from = std::min(0.0, std::floor(finding.value));
    row.to = std::max(reach * 1.25, std::ceil(finding.value));
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace rehale::screens
