// The controls of "Where it goes": steppers and ticks for what the family's device lets one do.
#pragma once

#include "web/screens/app.h"

namespace rehale::screens {

// The puff as it is after what the person did in this frame.
[[nodiscard]] dose::Technique draw_where_controls(App& app, dose::Technique puff);

}  // namespace rehale::screens
