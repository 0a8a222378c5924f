// Pages of the gallery for what a run-through is drawn with: pads, the pace guide, times.
#include <cmath>

#include "tests/web/gallery_pages.h"
#include "web/kit/kit.h"

namespace rehale::gallery {

void draw_pads(kit::Ui& ui) {
  kit::begin_screen(ui, {.id = "run", .title = "Run-through", .back = true});
  kit::heading(ui, "ask", "What do you do now?", kit::Heading::question);
  kit::pace(
      ui,
      {.id = "pace", .elapsed_ms = 3400, .aim_ms = 10'000, .words = "of 10", .name = "3 seconds"});
  kit::pads(
      ui, {.id = "pads",
           .name = "What do you do now?",
           .pads = {{.id = "stop", .label = "Stop", .name = "Stop: Hold your breath", .main = true},
                    {.id = "fast", .label = "Breathe in fast and hard"},
                    {.id = "slow", .label = "Breathe in slowly"},
                    {.id = "lips", .label = "Close your lips round the mouthpiece"}}});
  kit::end_screen(ui, {.main = {}, .quiet = {.id = "finish", .label = "I am done"}});
}

void draw_spans(kit::Ui& ui) {
  kit::begin_screen(ui, {.id = "told", .title = "Your run-through"});
  kit::heading(ui, "title", "Your times, and the times to aim for");
  kit::spans(ui, "times",
             {{.id = "0",
               .label = "Breathe in slowly",
               .words = "1.2 seconds. Aim for 3 to 5 seconds.",
               .value = 1.2,
               .low = 3,
               .high = 6,
               .to = 7.5},
              {.id = "1",
               .label = "Press the can",
               .words = "0.8 seconds before your breath began. Start to breathe first.",
               .moment = true,
               .value = -.8,
               .high = 1,
               .from = -1,
               .to = 1.25},
              {.id = "2",
               .label = "Take it out. Hold your breath",
               .words = "10 seconds. Aim for about 10 seconds.",
               .met = true,
               .value = 10,
               .low = 5,
               .high = INFINITY,
               .to = 25}});
  kit::end_screen(ui, {.main = {.id = "again", .label = "Try again"}});
}

}  // namespace rehale::gallery
