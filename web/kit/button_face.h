// How a button looks, wherever it stands. For files of web/kit only.
#pragma once

#include <string_view>

#include "web/kit/icons.h"
#include "web/kit/widget.h"

namespace rehale::kit {

enum class ButtonKind : unsigned char { main, quiet };

struct ButtonFace {
  std::string_view label;
  Icon icon = Icon::none;
  ButtonKind kind = ButtonKind::quiet;
  bool enabled = true;
  bool on = false;  // toggles
};

// Height for a width; width that the label likes on one line.
float button_height(Ui& ui, const ButtonFace& face, float width_px);
float button_width(const Ui& ui, const ButtonFace& face);
// Its longest word keeps its size in that width.
bool words_keep_size(const Ui& ui, const ButtonFace& face, float width_px);
void draw_button_face(Ui& ui, const ButtonFace& face, Rect rect, const Response& answer);

}  // namespace rehale::kit
