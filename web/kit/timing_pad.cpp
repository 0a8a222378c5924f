#include "web/kit/timing_pad.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/buttons.h"
#include "web/kit/widget.h"
#include "web/shell/host.h"

namespace rehale::kit {
namespace {

using Phase = Timing::Phase;

constexpr float k_pad_px = 264, k_ring_px = 14, k_seconds_px = 64;
constexpr double k_frame_ms = 33;  // a calm ring needs no more
constexpr float k_turn = 6.2831853F;

std::string result_words(const Words& w, int seconds) {
  if (seconds == 1) return w.timer_result_one;
  return fill(w.timer_result, {{"seconds", std::to_string(seconds)}});
}

int whole_seconds(double ms) { return static_cast<int>(std::floor(ms / 1000 + 1e-9)); }

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

void draw_ring(Ui& ui, Rect pad, double share) {
  const Palette& p = ui.palette();
  ImDrawList* list = ui.draw_list();
  const ImVec2 middle{pad.x + pad.w / 2, pad.y + pad.h / 2};
  const float radius = pad.w / 2 - k_ring_px / 2;
  list->AddCircle(middle, radius, packed(p.rule), 0, k_ring_px);
  const auto turn = static_cast<float>(share - std::floor(share));
  const float filled = share >= 1 && turn == 0 ? 1 : turn;
  list->PathArcTo(middle, radius, -k_turn / 4, k_turn * (filled - 0.25F), 96);
  list->PathStroke(packed(p.main), ImDrawFlags_None, k_ring_px);
}

void draw_ready(Ui& ui, Rect pad, const Response& answer) {
  const Palette& p = ui.palette();
  const Colour ground = answer.pressed ? p.main_press : answer.hovered ? p.main_hover : p.main;
  fill_box(ui.draw_list(), pad, ground, pad.h / 2);
  const float hand = pad.w * 0.3F;
  draw_icon(ui.draw_list(), Icon::hand,
            {pad.x + (pad.w - hand) / 2, pad.y + pad.h * 0.2F, hand, hand}, p.on_main);
  draw_middle(ui, bold_type(ui), ui.words().timer_start,
              {pad.x + pad.w * 0.14F, pad.y + pad.h * 0.54F, pad.w * 0.72F, pad.h * 0.26F},
              p.on_main);
}

void draw_running(Ui& ui, const TimingPad& what, double elapsed_ms, Rect pad) {
  const Palette& p = ui.palette();
  fill_box(ui.draw_list(), pad, p.main_wash, pad.h / 2);
  if (!ui.reduced_motion()) draw_ring(ui, pad, elapsed_ms / what.full_ms);
  const Rect inner = shrunk(pad, pad.w * 0.16F);
  draw_middle(ui, {Face::bold, scaled(ui, k_seconds_px)}, std::to_string(whole_seconds(elapsed_ms)),
              {inner.x, inner.y + inner.h * 0.06F, inner.w, inner.h * 0.5F}, p.ink);
  draw_middle(ui, bold_type(ui), ui.words().timer_stop,
              {inner.x, inner.y + inner.h * 0.58F, inner.w, inner.h * 0.34F}, p.main);
}

void draw_done(Ui& ui, const std::string& words, Rect pad) {
  const Palette& p = ui.palette();
  draw_box(ui.draw_list(), pad, {p.card, p.main, k_edge_chosen_px, pad.h / 2});
  draw_middle(ui, {Face::bold, scaled(ui, k_title_px)}, words, shrunk(pad, pad.w * 0.16F), p.ink);
}

// One frame when the picture next differs: each whole second, and the ring in between.
void ask_next_frame(const Ui& ui, const TimingPad& pad, const Timing& timing) {
  const double elapsed = ui.now_ms() - timing.started_ms;
  const double second = timing.started_ms + 1000.0 * (whole_seconds(elapsed) + 1);
  const double end = timing.started_ms + pad.longest_ms;
  const double ring = ui.reduced_motion() ? second : ui.now_ms() + k_frame_ms;
  shell::redraw_at(std::min({second, end, ring}));
}

Timing pressed(Ui& ui, const Timing& timing) {
  const Words& w = ui.words();
  want_frame(ui);
  if (timing.phase != Phase::running) {
    ui.say(w.timer_running);
    return {Phase::running, ui.now_ms(), 0};
  }
  const double measured = ui.now_ms() - timing.started_ms;
  ui.say(result_words(w, whole_seconds(measured)));
  return {Phase::done, timing.started_ms, measured};
}

Timing run_out(Ui& ui, const TimingPad& pad, Timing timing) {
  if (timing.phase != Phase::running) return timing;
  if (ui.now_ms() - timing.started_ms < pad.longest_ms) return timing;
  ui.say(result_words(ui.words(), whole_seconds(pad.longest_ms)));
  want_frame(ui);
  return {Phase::done, timing.started_ms, pad.longest_ms};
}

Rect place_pad(Ui& ui) {
  const float room = std::max(160.0F, ui.state().body.view.h * 0.52F);
  const float liked = k_pad_px * (1 + (ui.text_scale() - 1) * 0.5F);
  const float size = std::floor(std::min({liked, room, column_width(ui)}));
  const Rect row = place(ui, size, 20);
  const bool narrow = row.w < 480;
  return {narrow ? row.x + std::round((row.w - size) / 2) : row.x, row.y, size, size};
}

Timing draw_result(Ui& ui, const TimingPad& pad, const Timing& timing, Rect rect) {
  const std::string words = result_words(ui.words(), whole_seconds(timing.measured_ms));
  draw_done(ui, words, rect);
  record(ui, {.id = joined(pad.id, "result"),
              .role = shell::Role::paragraph,
              .name = words,
              .rect = rect});
  if (pad.locked) return timing;
  const Button again{
      .id = joined(pad.id, "again"), .label = ui.words().timer_again, .icon = Icon::again};
  return quiet_button(ui, again) ? pressed(ui, {}) : timing;
}

}  // namespace

Timing timing_pad(Ui& ui, const TimingPad& pad, Timing timing) {
  timing = run_out(ui, pad, timing);
  const Rect rect = place_pad(ui);
  if (timing.phase == Phase::done) {
    timing = draw_result(ui, pad, timing, rect);
  } else {
    const Response answer = respond(ui, pad.id, rect, !pad.locked);
    const bool running = timing.phase == Phase::running;
    if (running) {
      draw_running(ui, pad, ui.now_ms() - timing.started_ms, rect);
    } else {
      draw_ready(ui, rect, answer);
    }
    record(ui, {.id = pad.id,
                .role = shell::Role::button,
                .name = running ? ui.words().timer_stop : ui.words().timer_start,
                .description = pad.name,
                .disabled = pad.locked,
                .rect = rect});
    if (answer.activated) timing = pressed(ui, timing);
  }
  if (timing.phase == Phase::running) ask_next_frame(ui, pad, timing);
  return timing;
}

}  // namespace rehale::kit
