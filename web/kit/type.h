// Type: fonts, sizes, wrapping and drawing of words. For files of web/kit only.
// Must not know widgets or the mirror.
#pragma once

#include <string_view>

#include "web/kit/state.h"

namespace rehale::kit {

struct TypeStyle {
  Face face = Face::regular;
  float size_px = k_body_px;  // em size, already scaled
};

// A text size at the person's scale.
float scaled(const Ui& ui, float px);
// Room and targets grow more slowly than words.
float roomy(const Ui& ui, float px);

TypeStyle body_type(const Ui& ui);
TypeStyle bold_type(const Ui& ui);
TypeStyle caption_type(const Ui& ui, Face face = Face::regular);

// The same style, smaller where its longest word would not fit the width (never below 17 px).
TypeStyle fitted(const Ui& ui, TypeStyle style, std::string_view text, float width_px);
// Smaller also where all its lines would not fit the height.
TypeStyle fitted_in(Ui& ui, TypeStyle style, std::string_view text, Rect room);

float text_width(const Ui& ui, TypeStyle style, std::string_view text);
float average_char_px(const Ui& ui, TypeStyle style);

// Wrapped at the width and at 60 characters; cached.
const TextBlock& wrapped(Ui& ui, TypeStyle style, std::string_view text, float width_px);

enum class Align : unsigned char { left, middle };
struct TextPlace {
  float x = 0, y = 0;
  Colour colour;
  Align align = Align::left;
  float width = 0;  // for middle
};
void draw_text(Ui& ui, TypeStyle style, std::string_view text, const TextBlock& block,
               const TextPlace& place);

}  // namespace rehale::kit
