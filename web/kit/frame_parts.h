// The parts of a screen's frame: top bar and action area. For screen_frame.cpp only.
#pragma once

#include "web/kit/screen_frame.h"
#include "web/kit/state.h"

namespace rehale::kit {

bool is_wide(const Ui& ui);  // room for buttons side by side
float page_margin_px(const Ui& ui);

// True: the stepping stones' words have room in the bar; else the body's first line says them.
bool words_fit_bar(const Ui& ui);
float top_bar_px(const Ui& ui);
TopPress draw_top_bar(Ui& ui);

// Narrow screens: only the main action stays at the bottom; the quiet one ends the body, apart from
// it.
bool quiet_flows(Ui& ui, const Actions& actions, float width_px);

// Height of the action area in a column that wide, edges included; 0: no action.
float actions_height(Ui& ui, const Actions& actions, float width_px);
ActionPress draw_actions(Ui& ui, const Actions& actions, Rect column);

}  // namespace rehale::kit
