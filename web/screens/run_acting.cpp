// The run-through as it goes on: the drawing acts, pads to choose from, a guide for what lasts.
#include <algorithm>
#include <cmath>

#include "core/catalog/lookup.h"
#include "core/rehearsal/account.h"
#include "web/screens/pictures.h"
#include "web/screens/rehearsal_words.h"
#include "web/screens/run_parts.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

using catalog::Id;

constexpr double k_forgotten_ms = 180'000;  // what still runs then was left alone

const catalog::RunStep& step_of(const App& app, const Id& id) {
  return *catalog::find(app.rehearsed_family().run_through.steps, id);
}

std::string seconds_told(const App& app, double ms) {
  const int whole = static_cast<int>(std::floor(ms / 1000 + 1e-9));
  const kit::Words& w = app.ui->words();
  return whole == 1 ? w.timer_result_one
                    : kit::fill(w.timer_result, {{"seconds", std::to_string(whole)}});
}

// What was done last, or goes on: the press too while a breath runs.
std::vector<Id> pose_now(const App& app) {
  const auto& acts = app.rehearsal.take().acts;
  const auto& actions = app.rehearsed_family().actions;
  const auto* running = app.rehearsal.running();
  std::vector<Id> pose;
  for (auto act = acts.rbegin(); act != acts.rend() && pose.empty(); ++act)
    pose = catalog::find(actions, act->step)->pose;
  if (running != nullptr && !acts.empty() && &acts.back() != running) {
    pose.insert(pose.begin(), catalog::find(actions, running->step)->pose.begin(),
                catalog::find(actions, running->step)->pose.end());
  }
  return pose;
}

// A held pad runs until the finger goes, wherever it is by then. Breaths in that want a press
// meanwhile are for one finger: they start and stop by taps.
bool can_hold(const App& app, const Id& id) {
  return !app.rehearsal.taps && step_of(app, id).timed && step_of(app, id).ends.empty();
}

void announce(App& app, const Id& id, const rehearsal::Act* before, double lasted_ms) {
  const auto* running = app.rehearsal.running();
  const std::string& words = step_words(app, id);
  if (running != nullptr && running->step == id) {
    app.ui->say(kit::fill(app.say("run/started"), {{"step", words}}));
  } else if (before != nullptr) {
    app.ui->say(kit::fill(app.say("run/stopped"),
                          {{"step", words}, {"seconds", seconds_told(app, lasted_ms)}}));
  } else {
    app.ui->say(kit::fill(app.say("run/did"), {{"step", words}}));
  }
}

void choose(App& app, const Id& id, double now) {
  Rehearsal& run = app.rehearsal;
  const auto* before = run.running();
  const bool stops = before != nullptr && before->step == id;
  const double lasted = run.elapsed_ms(now);
  run.choose(id, now);
  announce(app, id, stops ? before : nullptr, lasted);
  const auto shown = run.on_screen();
  // Where the pad that was pressed is gone, the keyboard goes on at the first one.
  if (!shown.empty() && catalog::index_of(shown, id) < 0) app.ui->focus("pads/" + shown.front());
  shell::redraw();
}

// A finger that comes back soon had slipped; else the step ended when it went.
void follow_held(App& app) {
  const double now = app.ui->now_ms();
  double& let_go = app.rehearsal_let_go_ms;
  const auto* running = app.rehearsal.running();
  if (running != nullptr && kit::finger_down(*app.ui)) {
    let_go = -1;
    return;
  }
  if (let_go < 0) let_go = now;
  if (running != nullptr && now < let_go + rehearsal::k_slip_ms)
    return shell::redraw_at(let_go + rehearsal::k_slip_ms);
  app.rehearsal_held = false;
  if (running != nullptr) choose(app, Id(running->step), let_go);
  let_go = -1;
}

void draw_pace(App& app) {
  const auto* running = app.rehearsal.running();
  if (running == nullptr) return;
  const double elapsed = app.rehearsal.elapsed_ms(app.ui->now_ms());
  if (elapsed > k_forgotten_ms) return choose(app, Id(running->step), app.ui->now_ms());
  kit::Pace pace{.id = "pace", .elapsed_ms = elapsed, .words = {}, .name = {}};
  const auto aim = rehearsal::aim_s(app.rehearsed_family(), running->step);
  if (app.rehearsal.guided && aim) {
    pace.aim_ms = *aim * 1000;
    pace.words = kit::fill(app.say("run/of"), {{"seconds", seconds_words(app, *aim)}});
  }
  pace.name = seconds_told(app, elapsed);
  kit::pace(*app.ui, pace);
}

void draw_pads(App& app) {
  Rehearsal& run = app.rehearsal;
  const auto* running = run.running();
  const std::vector<Id> ids = run.on_screen();
  kit::Pads what{.id = "pads", .name = app.say("run/ask"), .pads = {}};
  for (const Id& id : ids) {
    kit::Pad pad{.id = id, .label = step_words(app, id)};
    if (running != nullptr && running->step == id) {
      pad.label = app.say(app.rehearsal_held ? "run/let-go" : "run/stop");
      pad.name = pad.label + ": " + step_words(app, id);
      pad.main = true;
    } else if (run.guided && id == run.offer().next) {
      pad.main = true;
    }
    what.pads.push_back(std::move(pad));
  }
  // The main pad has a row to itself: it comes first.
  std::stable_partition(what.pads.begin(), what.pads.end(),
                        [](const kit::Pad& pad) { return pad.main; });
  const kit::PadPress press = kit::pads(*app.ui, what);
  if (app.rehearsal_held) return follow_held(app);
  const int down = press.down;
  if (down >= 0 && running == nullptr &&
      can_hold(app, what.pads[static_cast<std::size_t>(down)].id)) {
    app.rehearsal_held = true;
    return choose(app, what.pads[static_cast<std::size_t>(down)].id, app.ui->now_ms());
  }
  if (press.activated >= 0)
    choose(app, what.pads[static_cast<std::size_t>(press.activated)].id, app.ui->now_ms());
}

void draw_asking(App& app) {
  kit::Ui& ui = *app.ui;
  const Rehearsal& run = app.rehearsal;
  const auto* running = run.running();
  kit::heading(ui, "title",
               running == nullptr ? app.say("run/ask") : step_words(app, running->step),
               kit::Heading::question);
  if (running != nullptr || !run.guided) return;
  const Id& next = run.offer().next;
  kit::caption(ui, "next",
               next.empty() ? app.say("run/next-none")
                            : kit::fill(app.say("run/next"), {{"step", step_words(app, next)}}));
}

// A step that only passes time may be passed over; it is told as such.
bool can_skip(const App& app) {
  const auto* running = app.rehearsal.running();
  if (running == nullptr) return false;
  const auto& step = step_of(app, running->step);
  return step.timed && step.part == catalog::Part::hands && step.role == catalog::DoseRole::none;
}

}  // namespace

void draw_run_acting(App& app) {
  kit::Ui& ui = *app.ui;
  Rehearsal& run = app.rehearsal;
  const auto top = kit::begin_screen(ui, {.id = "run",
                                          .visit = "acting-" + std::to_string(run.tries()),
                                          .title = app.say("run/title"),
                                          .back = true});
  const auto pose = pose_now(app);
  kit::picture(ui, {.id = "picture",
                    .alternative = pose.empty() ? app.tell("tell") : pose_words(app, pose),
                    .draw = moving_picture(app, app.picked(), pose),
                    .least_px = 104});
  draw_asking(app);
  draw_pace(app);
  draw_pads(app);
  const bool skips = can_skip(app);
  kit::Actions actions{.main = {}, .quiet = {}};
  if (run.running() == nullptr) actions.quiet = {.id = "finish", .label = app.say("run/finish")};
  if (skips) actions.quiet = {.id = "skip", .label = app.say("run/skip")};
  const auto pressed = kit::end_screen(ui, actions);
  if (top == kit::TopPress::help) return app.to_about();
  if (top == kit::TopPress::back) return app.rehearsal.again();
  if (pressed == kit::ActionPress::none) return;
  if (!skips) return app.finish_run_through();
  run.skip(ui.now_ms());
  ui.say(app.say("run/skipped"));
}

}  // namespace rehale::screens
