#include "web/screens/where_controls.h"

#include <cmath>

namespace rehale::screens {

namespace {

using dose::Device;
using dose::Technique;

// One number with its name above it.
double labelled(App& app, const std::string& name, kit::Stepper stepper, double value) {
  stepper.name = app.say("where/" + name);
  kit::paragraph(*app.ui, stepper.id + "-name", stepper.name);
  return kit::stepper(*app.ui, stepper, value);
}

// "second", "seconds-before"…
const std::string& seconds(const App& app, double count, const std::string& which = "") {
  return app.say("where/" + std::string(count == 1 ? "second" : "seconds") + which);
}

// Breaths faster than the good one of a powder are not offered: the mouth curves were not measured
// there.
void draw_pace(App& app, Technique& puff) {
  const double shown = std::round(puff.inspired_ml * .6 / puff.flow_l_per_min) / 10;
  const double next = labelled(app, "pace",
                               {.id = "pace",
                                .unit = seconds(app, shown),
                                .min = dose::is_pressed(puff.device) ? 1. : 2.,
                                .max = 8},
                               shown);
  if (next != shown) puff.flow_l_per_min = dose::mean_flow_l_per_min(puff.inspired_ml, next);
}

void draw_press(App& app, Technique& puff) {
  const double shown = std::round(puff.press_s * 10) / 10;
  kit::Stepper stepper{.id = "press",
                       .unit = seconds(app, std::fabs(shown), shown < 0 ? "-before" : "-after"),
                       .min = -2,
                       .max = 8,
                       .step = .5};
  if (shown < 0) {
    stepper.shown = std::fmod(-shown, 1) == 0 ? std::to_string(static_cast<int>(-shown))
                                              : std::to_string(static_cast<int>(-shown)) + "." +
                                                    std::to_string(std::lround(-shown * 10) % 10);
    stepper.shown = kit::decimal_words(app.ui->words(), stepper.shown);
    stepper.spoken = stepper.shown + " " + stepper.unit;
  }
  const double next = labelled(app, "press", stepper, shown);
  if (next != shown) puff.press_s = next;
}

void draw_hold(App& app, Technique& puff) {
  puff.hold_s = labelled(app, "hold", {.id = "hold", .unit = seconds(app, puff.hold_s), .max = 20},
                         puff.hold_s);
}

void draw_vents(App& app, Technique& puff) {
  const double next = labelled(
      app, "vents", {.id = "vents", .unit = app.say("where/percent"), .max = 75, .step = 25},
      std::round(puff.vents_covered * 100));
  puff.vents_covered = next / 100;
}

struct Tick {
  const char* id;
  bool Technique::*what;
};

// Ticked: the person does it.
void draw_ticks(App& app, Technique& puff) {
  std::vector<Tick> ticks;
  const bool pressed = dose::is_pressed(puff.device);
  if (puff.device == Device::suspension_spray) ticks.push_back({"shaken", &Technique::shaken});
  if (!pressed) ticks.push_back({"blown", &Technique::breathed_into_device});
  if (puff.device == Device::lever_powder) ticks.push_back({"tilted", &Technique::tilted});
  if (!pressed) ticks.push_back({"twice", &Technique::loaded_twice});
  if (ticks.empty()) return;
  kit::Choices choices{.id = "ticks", .name = app.say("where/ticks")};
  std::vector<bool> on;
  for (const Tick& tick : ticks) {
    choices.options.push_back({.id = tick.id, .label = app.say(std::string("where/") + tick.id)});
    on.push_back(puff.*tick.what);
  }
  on = kit::several_of(*app.ui, choices, on);
  for (std::size_t n = 0; n < ticks.size(); ++n) puff.*ticks[n].what = on[n];
}

}  // namespace

dose::Technique draw_where_controls(App& app, dose::Technique puff) {
  kit::heading(*app.ui, "try-title", app.say("where/try"), kit::Heading::section);
  const bool pressed = dose::is_pressed(puff.device);
  if (pressed) draw_press(app, puff);
  draw_pace(app, puff);
  draw_hold(app, puff);
  if (!pressed) draw_vents(app, puff);
  draw_ticks(app, puff);
  return puff;
}

}  // namespace rehale::screens
