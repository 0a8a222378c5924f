// The three faces of the run-through screen. For run_through.cpp.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

void draw_run_acting(App& app);
void draw_run_told(App& app);

}  // namespace rehale::screens
