// The few sentences the kit itself says (move up, undo, light, larger…). English by default; the
// app replaces them from assets/text. {braces} are filled by name. Must not know screens or
// drawing.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace rehale::kit {

struct Words {
  std::string decimal = ".";  // between whole and part of a number
  std::string back = "Back";
  std::string help = "Help and about";
  std::string look = "Settings";
  std::string close = "Close";

  std::string look_title = "Settings";
  std::string language = "Language";
  std::string ground = "Colours";
  std::string ground_system = "As my device";
  std::string ground_light = "Light";
  std::string ground_dark = "Dark";
  std::string text_size = "Size of the words";
  std::string text_size_value = "{percent} percent";
  std::string more_contrast = "Stronger contrast";
  std::string sample = "Breathe out first, away from it.";
  std::string movement = "Movement";
  std::string hold_still = "Keep pictures still";
  std::string hand = "Your hand";
  std::string hand_tell = "What you press stands on that side, where it can.";
  std::string hand_right = "Right hand";
  std::string hand_left = "Left hand";
  std::string read_aloud = "Read aloud";
  std::string read_stop = "Stop reading";
  std::string read_how = "Press the speaker at the top. It reads the screen to you.";
  std::string read_none = "This device has no voice of its own for this language.";
  std::string read_slowly = "Read more slowly";
  std::string loudness = "How loud it reads";
  std::string loud = "Loud";
  std::string medium = "Medium";
  std::string quiet = "Quiet";
  std::string keep = "Next time";
  std::string remember = "Remember this on this device";
  std::string remember_tell = "Only these settings are kept. Untick it to delete them.";
  std::string not_kept = "This browser keeps nothing. The settings hold until you leave.";
  std::string as_device = "Back to what my device asks for";

  std::string going_well = "You have this";
  std::string to_mend = "To do better";
  std::string missed = "This one too";
  std::string caution = "Take care";

  std::string move_up = "Move up: {label}, now {place} of {count}";
  std::string move_down = "Move down: {label}, now {place} of {count}";
  std::string pick_up = "Pick up: {label}, now {place} of {count}";
  std::string put_here = "Put it here, place {place} of {count}: {label}";
  std::string put_back = "Put down: {label}, stays at {place} of {count}";
  std::string picked_hint = "Now tap the place where it goes.";
  std::string moved = "{label} is now {place} of {count}.";
  std::string undo_move = "Undo the last move";

  std::string less = "Less";
  std::string more = "More";

  std::string timer_start = "Tap to start";
  std::string timer_stop = "Tap to stop";
  std::string timer_running = "The timer runs. Tap to stop.";
  std::string timer_result = "{seconds} seconds";
  std::string timer_result_one = "1 second";
  std::string timer_again = "Do it again";
};

// "2.5" as these words write it: "2,5".
std::string decimal_words(const Words& words, std::string number);

// fill("now {place}", {{"place", "2"}}) == "now 2". Unknown names stay as they are.
std::string fill(std::string_view pattern,
                 std::initializer_list<std::pair<std::string_view, std::string_view>> values);

}  // namespace rehale::kit
