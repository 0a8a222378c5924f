// All of the kit for a screen: #include "web/kit/kit.h".
#pragma once

#include "web/kit/bar_table.h"     // IWYU pragma: export
#include "web/kit/body_dots.h"     // IWYU pragma: export
#include "web/kit/buttons.h"       // IWYU pragma: export
#include "web/kit/cards.h"         // IWYU pragma: export
#include "web/kit/choices.h"       // IWYU pragma: export
#include "web/kit/icons.h"         // IWYU pragma: export
#include "web/kit/illustration.h"  // IWYU pragma: export
#include "web/kit/ordering.h"      // IWYU pragma: export
#include "web/kit/pads.h"          // IWYU pragma: export
#include "web/kit/qr.h"            // IWYU pragma: export
#include "web/kit/scene_play.h"    // IWYU pragma: export
#include "web/kit/screen_frame.h"  // IWYU pragma: export
#include "web/kit/spans.h"         // IWYU pragma: export
#include "web/kit/stepper.h"       // IWYU pragma: export
#include "web/kit/text.h"          // IWYU pragma: export
#include "web/kit/timing_pad.h"    // IWYU pragma: export
#include "web/kit/ui.h"            // IWYU pragma: export
