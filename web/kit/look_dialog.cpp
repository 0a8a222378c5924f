#include "web/kit/look_dialog.h"

#include <cmath>
#include <string>

#include "web/kit/kit.h"
#include "web/kit/state.h"

namespace rehale::kit {
namespace {

int draw_ground(Ui& ui, const Words& w, int now) {
  heading(ui, "look/ground-title", w.ground, Heading::section);
  return one_of(ui,
                {.id = "look/ground",
                 .name = w.ground,
                 .options = {{.id = "system", .label = w.ground_system},
                             {.id = "light", .label = w.ground_light},
                             {.id = "dark", .label = w.ground_dark}}},
                now);
}

float draw_size(Ui& ui, const Words& w) {
  heading(ui, "look/size-title", w.text_size, Heading::section);
  const double percent = std::round(ui.text_scale() * 100.0F);
  const std::string told = std::to_string(static_cast<int>(percent));
  const double chosen = stepper(ui,
                                {.id = "look/size",
                                 .name = w.text_size,
                                 .unit = "%",
                                 .min = 100,
                                 .max = 200,
                                 .step = 25,
                                 .spoken = fill(w.text_size_value, {{"percent", told}})},
                                percent);
  return chosen == percent ? 0 : static_cast<float>(chosen / 100);
}

void draw_languages(Ui& ui, const Words& w) {
  State& s = ui.state();
  if (s.languages.size() < 2) return;
  heading(ui, "look/language-title", w.language, Heading::section);
  Choices choices{.id = "look/language", .name = w.language, .options = {}};
  int now = -1;
  for (const Language& language : s.languages) {
    if (language.id == s.language) now = static_cast<int>(choices.options.size());
    choices.options.push_back({.id = language.id, .label = language.name});
  }
  const int picked = one_of(ui, choices, now);
  if (picked != now) s.asked_language = s.languages[static_cast<std::size_t>(picked)].id;
}

}  // namespace

void open_look_dialog(Ui& ui) {
  ui.state().look_open = true;
  shell::redraw(3, "look");
}

void draw_look_dialog(Ui& ui) {
  State& s = ui.state();
  if (!s.look_open) return;
  const Words w = ui.words();
  Look look = ui.look();
  if (begin_dialog(ui, {.id = "look", .title = w.look_title})) s.look_open = false;
  look.ground = static_cast<Look::Ground>(draw_ground(ui, w, static_cast<int>(look.ground)));
  if (const float scale = draw_size(ui, w); scale > 0) look.text_scale = scale;
  gap(ui, 1);
  const auto contrast = several_of(ui,
                                   {.id = "look/contrast",
                                    .name = w.more_contrast,
                                    .options = {{.id = "more", .label = w.more_contrast}}},
                                   {look.more_contrast});
  look.more_contrast = contrast[0];
  draw_languages(ui, w);
  end_dialog(ui);
  ui.set_look(look);
}

}  // namespace rehale::kit
