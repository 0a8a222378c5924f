// The visual identity as numbers: colours by role, sizes in CSS px, and the table of every text or
// edge colour on the ground it is drawn on. Plain data, tested natively.
// Must not know Dear ImGui, widgets, screens or the browser.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace rehale::kit {

struct Colour {
  std::uint8_t r = 0, g = 0, b = 0;
  friend bool operator==(const Colour&, const Colour&) = default;
};

// Colours by what they mean, never by what they look like.
struct Palette {
  Colour paper;       // ground of every screen
  Colour card;        // ground of cards and answer rows
  Colour ink;         // reading text
  Colour soft_ink;    // second-rank reading text
  Colour main;        // the one action; chosen things
  Colour on_main;     // text and marks on main
  Colour main_wash;   // ground of a chosen row
  Colour main_hover;  // main under a mouse
  Colour main_press;  // main under a finger
  Colour row_hover;   // an answer row or quiet button under a mouse
  Colour row_press;   // the same under a finger
  Colour well;        // going well (moss): words and shape go with it
  Colour well_wash;
  Colour mend;  // to mend (rust): words and shape go with it
  Colour mend_wash;
  Colour highlight;  // saffron wash: cautions, "here"
  Colour edge;       // edge of a control
  Colour rule;       // quiet line that separates, carries no meaning
  Colour device;     // picture fills: body of a generic inhaler
  Colour device_shade;
  Colour skin;  // picture fill: hand and face
  Colour air;   // picture fill: breath
};

enum class Scheme : unsigned char { light, dark, light_contrast, dark_contrast };

const Palette& palette_of(Scheme scheme);

// What a pair must reach, by the WCAG 2.2 contrast ratio.
enum class Need : unsigned char {
  reading,  // >= 7: text (success criterion 1.4.6)
  shape,    // >= 3: edges, marks, states (1.4.11)
};

struct ColourPair {
  std::string_view use;  // "label of a chosen row"
  Colour Palette::*front;
  Colour Palette::*ground;
  Need need;
};

// Every pair the kit draws. A widget that draws a new one adds it here.
std::span<const ColourPair> colour_pairs();

// Contrast ratio 1…21 by WCAG 2.2's definitions of relative luminance and contrast ratio.
double contrast_ratio(Colour a, Colour b);

// Text sizes in CSS px (em size) at text scale 1; line height is 1.5 of them.
inline constexpr float k_body_px = 20, k_question_px = 26, k_title_px = 32, k_caption_px = 17;
inline constexpr float k_line_height = 1.5F;
inline constexpr float k_grid_px = 8, k_corner_px = 16, k_edge_px = 2, k_edge_chosen_px = 4;
inline constexpr float k_answer_px = 64;        // least height of answers and main actions
inline constexpr float k_target_px = 48;        // least size of every other target
inline constexpr float k_text_column_px = 720;  // widest text column
inline constexpr int k_line_chars = 60;         // most characters a line
inline constexpr double k_motion_ms = 300;      // length of every movement

}  // namespace rehale::kit
