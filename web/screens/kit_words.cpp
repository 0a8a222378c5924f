// The kit's own sentences, taken from the interface texts.
#include "web/screens/screens.h"

namespace rehale::screens {

namespace {

struct Entry {
  const char* key;
  std::string kit::Words::*word;
};

constexpr Entry k_entries[] = {
    {"decimal", &kit::Words::decimal},
    {"back", &kit::Words::back},
    {"help", &kit::Words::help},
    {"look", &kit::Words::look},
    {"close", &kit::Words::close},
    {"look-title", &kit::Words::look_title},
    {"language", &kit::Words::language},
    {"ground", &kit::Words::ground},
    {"ground-system", &kit::Words::ground_system},
    {"ground-light", &kit::Words::ground_light},
    {"ground-dark", &kit::Words::ground_dark},
    {"text-size", &kit::Words::text_size},
    {"text-size-value", &kit::Words::text_size_value},
    {"more-contrast", &kit::Words::more_contrast},
    {"going-well", &kit::Words::going_well},
    {"to-mend", &kit::Words::to_mend},
    {"missed", &kit::Words::missed},
    {"caution", &kit::Words::caution},
    {"move-up", &kit::Words::move_up},
    {"move-down", &kit::Words::move_down},
    {"pick-up", &kit::Words::pick_up},
    {"put-here", &kit::Words::put_here},
    {"put-back", &kit::Words::put_back},
    {"picked-hint", &kit::Words::picked_hint},
    {"moved", &kit::Words::moved},
    {"undo-move", &kit::Words::undo_move},
    {"less", &kit::Words::less},
    {"more", &kit::Words::more},
    {"timer-start", &kit::Words::timer_start},
    {"timer-stop", &kit::Words::timer_stop},
    {"timer-running", &kit::Words::timer_running},
    {"timer-result", &kit::Words::timer_result},
    {"timer-result-one", &kit::Words::timer_result_one},
    {"timer-again", &kit::Words::timer_again},
};

constexpr Entry k_settings_entries[] = {
    {"sample", &kit::Words::sample},
    {"movement", &kit::Words::movement},
    {"hold-still", &kit::Words::hold_still},
    {"hand", &kit::Words::hand},
    {"hand-tell", &kit::Words::hand_tell},
    {"hand-right", &kit::Words::hand_right},
    {"hand-left", &kit::Words::hand_left},
    {"read-aloud", &kit::Words::read_aloud},
    {"read-stop", &kit::Words::read_stop},
    {"read-how", &kit::Words::read_how},
    {"read-none", &kit::Words::read_none},
    {"read-slowly", &kit::Words::read_slowly},
    {"loudness", &kit::Words::loudness},
    {"loud", &kit::Words::loud},
    {"medium", &kit::Words::medium},
    {"quiet", &kit::Words::quiet},
    {"keep", &kit::Words::keep},
    {"remember", &kit::Words::remember},
    {"remember-tell", &kit::Words::remember_tell},
    {"not-kept", &kit::Words::not_kept},
    {"as-device", &kit::Words::as_device},
};

}  // namespace

kit::Words kit_words(const App& app) {
  kit::Words words;
  for (const Entry& entry : k_settings_entries)
    words.*entry.word = app.say(std::string("settings/") + entry.key);
  for (const Entry& entry : k_entries) words.*entry.word = app.say(std::string("kit/") + entry.key);
  return words;
}

}  // namespace rehale::screens
