#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/pads.h"
#include "web/kit/widget.h"
#include "web/shell/host.h"

namespace rehale::kit {
namespace {

constexpr float k_least_px = 112, k_ring_px = 12, k_seconds_px = 56, k_turn = 6.2831853F;
constexpr double k_frame_ms = 33, k_clock_ms = 60'000;

void draw_middle(Ui& ui, TypeStyle type, std::string_view text, Rect row, Colour colour) {
  const TypeStyle fit = fitted_in(ui, type, text, row);
  const TextBlock& block = wrapped(ui, fit, text, row.w);
  draw_text(ui, fit, text, block,
            {.x = row.x,
             .y = row.y + (row.h - block.height) / 2,
             .colour = colour,
             .align = Align::middle,
             .width = row.w});
}

void draw_ring(Ui& ui, const Pace& pace, Rect rect) {
  const Palette& p = ui.palette();
  const ImVec2 middle{rect.x + rect.w / 2, rect.y + rect.h / 2};
  const float radius = rect.w / 2 - k_ring_px / 2;
  ui.draw_list()->AddCircle(middle, radius, packed(p.edge), 0, 2);
  const double share = pace.aim_ms > 0 ? std::min(1.0, pace.elapsed_ms / pace.aim_ms)
                                       : std::fmod(pace.elapsed_ms / k_clock_ms, 1.0);
  if (pace.aim_ms > 0) {  // a circle that fills
    ui.draw_list()->AddCircleFilled(middle, (radius - k_ring_px) * static_cast<float>(share),
                                    packed(p.main_wash), 96);
  }
  ui.draw_list()->PathArcTo(middle, radius, -k_turn / 4,
                            k_turn * (static_cast<float>(share) - 0.25F), 96);
  ui.draw_list()->PathStroke(packed(p.main), ImDrawFlags_None, k_ring_px);
}

// One frame when the picture next differs: each whole second, and the ring in between.
void ask_next_frame(const Ui& ui, const Pace& pace) {
  const double into_second = std::fmod(pace.elapsed_ms, 1000.0);
  const double second = ui.now_ms() + 1000.0 - into_second;
  shell::redraw_at(ui.reduced_motion() ? second : std::min(second, ui.now_ms() + k_frame_ms));
}

}  // namespace

void pace(Ui& ui, const Pace& what) {
  const float liked = 152 * (1 + (ui.text_scale() - 1) * 0.5F);
  const float size =
      std::floor(std::min(liked, std::max(k_least_px, ui.state().body.view.h * 0.4F)));
  const Rect row = place(ui, size, 12);
  const Rect rect{row.x + std::round((row.w - size) / 2), row.y, size, size};
  if (!ui.reduced_motion()) draw_ring(ui, what, rect);
  const auto seconds = std::to_string(static_cast<int>(std::floor(what.elapsed_ms / 1000 + 1e-9)));
  const bool two = !what.words.empty();
  const Palette& p = ui.palette();
  draw_middle(ui, {Face::bold, scaled(ui, k_seconds_px)}, seconds,
              {rect.x, rect.y + size * (two ? 0.12F : 0.2F), size, size * (two ? 0.42F : 0.5F)},
              p.ink);
  if (two) {
    draw_middle(ui, bold_type(ui), what.words, {rect.x, rect.y + size * 0.6F, size, size * 0.22F},
                p.ink);
  }
  record(ui, {.id = what.id, .role = shell::Role::paragraph, .name = what.name, .rect = rect});
  ask_next_frame(ui, what);
}

}  // namespace rehale::kit
