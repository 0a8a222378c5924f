#include "web/kit/stepper.h"

#include <algorithm>
#include <cmath>

#include "web/kit/icons.h"
#include "web/kit/widget.h"
#include "web/shell/short_decimal.h"

namespace rehale::kit {
namespace {

constexpr float k_gap_px = 16, k_number_px = 32;

std::string number_words(const Ui& ui, double value) {
  return decimal_words(ui.words(), shell::short_decimal(value, 1));
}

std::string spoken(const Ui& ui, const Stepper& stepper, double value) {
  if (!stepper.spoken.empty()) return stepper.spoken;
  return number_words(ui, value) + (stepper.unit.empty() ? "" : " " + stepper.unit);
}

double on_step(const Stepper& stepper, double value) {
  const double step = stepper.step > 0 ? stepper.step : 1;
  const double steps = std::round((value - stepper.min) / step);
  return std::clamp(stepper.min + steps * step, stepper.min, stepper.max);
}

struct Part {
  std::string id;
  std::string name;
  Icon icon = Icon::none;
  bool can = true;
  Rect rect;
};

bool draw_round(Ui& ui, const Part& part) {
  const Palette& p = ui.palette();
  const Response answer = respond(ui, part.id, part.rect, part.can);
  const Colour ground = answer.pressed ? p.row_press : answer.hovered ? p.row_hover : p.card;
  draw_box(ui.draw_list(), part.rect,
           {ground, part.can ? p.edge : p.rule, k_edge_px, part.rect.h / 2});
  draw_icon(ui.draw_list(), part.icon, shrunk(part.rect, part.rect.w * 0.3F),
            part.can ? p.main : p.rule);
  record(ui, {.id = part.id,
              .role = shell::Role::button,
              .name = part.name,
              .disabled = !part.can,
              .rect = part.rect});
  return answer.activated;
}

// The number large, its unit beside it or, where there is no room, below it.
void draw_value(Ui& ui, const Stepper& stepper, double value, Rect rect) {
  const Palette& p = ui.palette();
  const std::string number = stepper.shown.empty() ? number_words(ui, value) : stepper.shown;
  const TypeStyle big{Face::bold, scaled(ui, k_number_px)};
  const TextBlock& digits = wrapped(ui, big, number, 1e6F);
  const TypeStyle small = body_type(ui);
  const float unit = stepper.unit.empty() ? 0 : text_width(ui, small, stepper.unit) + 10;
  const bool beside = digits.width + unit <= rect.w;
  const float used = beside ? digits.width + unit : digits.width;
  const float below =
      beside || stepper.unit.empty() ? 0 : wrapped(ui, small, stepper.unit, rect.w).height;
  const float x = rect.x + (rect.w - used) / 2;
  const float y = rect.y + (rect.h - digits.height - below) / 2;
  draw_text(ui, big, number, digits, {.x = x, .y = y, .colour = p.ink});
  if (stepper.unit.empty()) return;
  const TextBlock& words = wrapped(ui, small, stepper.unit, beside ? 1e6F : rect.w);
  const float words_x = beside ? x + digits.width + 10 : rect.x + (rect.w - words.width) / 2;
  const float drop = big.size_px * 0.36F - small.size_px * 0.36F;
  const float words_y = beside ? y + (digits.height - words.height) / 2 + drop : y + digits.height;
  draw_text(ui, small, stepper.unit, words,
            {.x = words_x,
             .y = words_y,
             .colour = p.soft_ink,
             .align = Align::middle,
             .width = words.width});
}

struct Layout {
  Rect less, more, middle;
};

// The value between its buttons; above them where it would not fit.
Layout lay_out(Ui& ui, const Stepper& stepper) {
  const float size = roomy(ui, k_answer_px);
  const TypeStyle big{Face::bold, scaled(ui, k_number_px)};
  const float digits = big.size_px * k_line_height;
  const float unit_px = text_width(ui, body_type(ui), stepper.unit);
  const float liked = 2 * (size + k_gap_px) + std::max(scaled(ui, 180), unit_px + scaled(ui, 90));
  const float width = std::min(column_width(ui), liked);
  const float between = width - 2 * (size + k_gap_px);
  const float number = std::max({text_width(ui, big, number_words(ui, stepper.max)),
                                 text_width(ui, big, number_words(ui, stepper.min)),
                                 text_width(ui, big, stepper.shown)});
  const auto value_px = [&](float room) {
    const bool one_line = stepper.unit.empty() || number + unit_px + 10 <= room;
    return one_line ? digits : digits + wrapped(ui, body_type(ui), stepper.unit, room).height;
  };
  if (std::max(number, unit_px) > between) {
    const float high = value_px(width);
    const Rect row = place(ui, high + k_gap_px + size, 20);
    const float y = row.y + high + k_gap_px;
    return {
        {row.x, y, size, size}, {row.x + width - size, y, size, size}, {row.x, row.y, width, high}};
  }
  const float height = value_px(between);
  const Rect row = place(ui, std::max(size, height), 20);
  const float y = row.y + std::round((row.h - size) / 2);
  return {{row.x, y, size, size},
          {row.x + width - size, y, size, size},
          {row.x + size + k_gap_px, row.y, between, row.h}};
}

}  // namespace

double stepper(Ui& ui, const Stepper& stepper, double value) {
  const Words& w = ui.words();
  const auto [less, more, middle] = lay_out(ui, stepper);
  double next = value;
  if (draw_round(ui, {joined(stepper.id, "less"), w.less + ": " + stepper.name, Icon::minus,
                      !stepper.locked && value > stepper.min, less})) {
    next = on_step(stepper, value - stepper.step);
  }
  draw_value(ui, stepper, value, middle);
  record(ui, {.id = stepper.id,
              .role = shell::Role::spin,
              .name = stepper.name,
              .value = spoken(ui, stepper, value),
              .number = value,
              .min = stepper.min,
              .max = stepper.max,
              .step = stepper.step,
              .disabled = stepper.locked,
              .rect = middle});
  if (draw_round(ui, {joined(stepper.id, "more"), w.more + ": " + stepper.name, Icon::plus,
                      !stepper.locked && value < stepper.max, more})) {
    next = on_step(stepper, value + stepper.step);
  }
  if (const double* typed = number_given(ui, stepper.id); typed != nullptr && !stepper.locked) {
    next = on_step(stepper, *typed);
  }
  if (next != value) want_frame(ui);
  return next;
}

}  // namespace rehale::kit
