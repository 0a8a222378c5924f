#include "web/kit/settings_dialog.h"

#include <cmath>
#include <string>

#include "web/kit/kit.h"
#include "web/kit/read_aloud.h"
#include "web/kit/state.h"

namespace rehale::kit {
namespace {

constexpr float k_part_gap = 1.5F;

// One box to tick; returns whether it is ticked now.
bool tick(Ui& ui, const std::string& id, const std::string& label, bool on) {
  return several_of(ui, {.id = id, .name = label, .options = {{.id = "on", .label = label}}},
                    {on})[0];
}

// A wish shows what holds now. Only a press on it makes it the person's own.
void tick_wish(Ui& ui, const std::string& id, const std::string& label, Wish& wish, bool now) {
  const bool wanted = tick(ui, id, label, now);
  if (wanted != now) wish = wanted ? Wish::yes : Wish::no;
}

void draw_size(Ui& ui, const Words& w, Look& look) {
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
  if (chosen != percent) look.text_scale = static_cast<float>(chosen / 100);
  paragraph(ui, "look/sample", w.sample);
}

void draw_colours(Ui& ui, const Words& w, Look& look) {
  gap(ui, k_part_gap);
  heading(ui, "look/ground-title", w.ground, Heading::section);
  const int picked = one_of(ui,
                            {.id = "look/ground",
                             .name = w.ground,
                             .options = {{.id = "system", .label = w.ground_system},
                                         {.id = "light", .label = w.ground_light},
                                         {.id = "dark", .label = w.ground_dark}}},
                            static_cast<int>(look.ground));
  look.ground = static_cast<Look::Ground>(picked);
  tick_wish(ui, "look/contrast", w.more_contrast, look.more_contrast,
            ui.state().preferences.more_contrast);
}

void draw_languages(Ui& ui, const Words& w) {
  State& s = ui.state();
  if (s.languages.size() < 2) return;
  gap(ui, k_part_gap);
  heading(ui, "look/language-title", w.language, Heading::section);
  Choices choices{.id = "look/language", .name = w.language, .options = {}};
  int now = -1;
  for (const Language& language : s.languages) {
    if (language.id == s.language) now = static_cast<int>(choices.options.size());
    choices.options.push_back({.id = language.id, .label = language.name, .language = language.id});
  }
  const int picked = one_of(ui, choices, now);
  if (picked != now) s.asked_language = s.languages[static_cast<std::size_t>(picked)].id;
}

void draw_movement(Ui& ui, const Words& w, Look& look) {
  gap(ui, k_part_gap);
  heading(ui, "look/motion-title", w.movement, Heading::section);
  tick_wish(ui, "look/still", w.hold_still, look.still, ui.reduced_motion());
}

void draw_hand(Ui& ui, const Words& w, Look& look) {
  gap(ui, k_part_gap);
  heading(ui, "look/hand-title", w.hand, Heading::section);
  caption(ui, "look/hand-tell", w.hand_tell);
  look.left_hand = one_of(ui,
                          {.id = "look/hand",
                           .name = w.hand,
                           .options = {{.id = "right", .label = w.hand_right},
                                       {.id = "left", .label = w.hand_left}}},
                          look.left_hand ? 1 : 0) == 1;
}

void draw_voice(Ui& ui, const Words& w, Look& look) {
  gap(ui, k_part_gap);
  heading(ui, "look/voice-title", w.read_aloud, Heading::section);
  const bool can = can_read_aloud(ui);
  paragraph(ui, "look/voice-tell", can ? w.read_how : w.read_none);
  if (!can) return;
  look.read_slowly = tick(ui, "look/slowly", w.read_slowly, look.read_slowly);
  gap(ui, 1);
  heading(ui, "look/loudness-title", w.loudness, Heading::section);
  const int picked = one_of(ui,
                            {.id = "look/loudness",
                             .name = w.loudness,
                             .options = {{.id = "loud", .label = w.loud},
                                         {.id = "medium", .label = w.medium},
                                         {.id = "quiet", .label = w.quiet}}},
                            static_cast<int>(look.loudness));
  look.loudness = static_cast<Look::Loudness>(picked);
}

void draw_remember(Ui& ui, const Words& w, Look& look) {
  State& s = ui.state();
  gap(ui, k_part_gap);
  heading(ui, "look/keep-title", w.keep, Heading::section);
  s.remembered = tick(ui, "look/remember", w.remember, s.remembered);
  if (s.remembered) s.not_kept = false;
  caption(ui, "look/remember-tell", w.remember_tell);
  if (s.not_kept) status_line(ui, "look/not-kept", w.not_kept);
  if (look == Look{}) return;
  gap(ui, 1);
  if (quiet_button(ui, {.id = "look/reset", .label = w.as_device, .icon = Icon::again})) look = {};
}

}  // namespace

void open_settings(Ui& ui) {
  ui.state().settings_open = true;
  shell::redraw(3, "settings");
}

void close_settings(Ui& ui) { ui.state().settings_open = false; }

void draw_settings(Ui& ui) {
  State& s = ui.state();
  if (!s.settings_open) return;
  const Words w = ui.words();
  Look look = ui.look();
  if (begin_dialog(ui, {.id = "look", .title = w.look_title})) s.settings_open = false;
  draw_size(ui, w, look);
  draw_colours(ui, w, look);
  draw_languages(ui, w);
  draw_movement(ui, w, look);
  draw_hand(ui, w, look);
  draw_voice(ui, w, look);
  if (!s.shared) draw_remember(ui, w, look);
  end_dialog(ui);
  ui.set_look(look);
}

}  // namespace rehale::kit
