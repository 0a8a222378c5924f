// The action area of a screen: one main action, a quiet one apart from it, and why the main one is
// not ready yet when it was pressed.
#include <algorithm>
#include <string>

#include "web/kit/button_face.h"
#include "web/kit/frame_parts.h"

namespace rehale::kit {
namespace {

constexpr float k_stack_gap_px = 12, k_side_gap_px = 32;
constexpr float k_main_least_px = 280, k_main_most_px = 420;

ButtonFace face_of(const ActionButton& button, ButtonKind kind) {
  return {button.label, button.icon, kind, button.enabled};
}

struct Plan {
  Rect main, quiet;  // relative to the area's top left; w == 0: not there
  float line_y = 0;
  float height = 0;
};

float main_width(const Ui& ui, const ActionButton& button, float room) {
  const float most = std::min(room, k_main_most_px * ui.text_scale());
  return std::clamp(button_width(ui, face_of(button, ButtonKind::main)),
                    std::min(k_main_least_px, most), most);
}

// Why the main action is not ready; else the note.
const std::string& line_above(const Ui& ui, const Actions& actions) {
  const std::string& told = ui.state().screen.told_why_not;
  const bool waits = !told.empty() && !actions.main.enabled && !actions.main.id.empty();
  return waits ? told : actions.note;
}

TypeStyle line_type(const Ui& ui, const Actions& actions) {
  return &line_above(ui, actions) == &actions.note ? caption_type(ui) : body_type(ui);
}

float line_height(Ui& ui, const Actions& actions, float width) {
  const std::string& line = line_above(ui, actions);
  if (line.empty()) return 0;
  return wrapped(ui, line_type(ui, actions), line, width).height + 8;
}

Plan stacked(Ui& ui, const Actions& actions, float width) {
  Plan plan;
  if (!actions.quiet.id.empty()) {
    plan.quiet = {0, 0, width, button_height(ui, face_of(actions.quiet, ButtonKind::quiet), width)};
    plan.height = plan.quiet.h;
  }
  if (actions.main.id.empty()) return plan;
  if (plan.height > 0) plan.height += k_stack_gap_px;
  plan.line_y = plan.height;
  plan.height += line_height(ui, actions, width);
  plan.main = {0, plan.height, width,
               button_height(ui, face_of(actions.main, ButtonKind::main), width)};
  plan.height += plan.main.h;
  return plan;
}

Plan side_by_side(Ui& ui, const Actions& actions, float width) {
  Plan plan;
  plan.height = line_height(ui, actions, width);
  const float top = plan.height;
  float x = 0;
  if (!actions.main.id.empty()) {
    const float w = main_width(ui, actions.main, width);
    plan.main = {0, top, w, button_height(ui, face_of(actions.main, ButtonKind::main), w)};
    x = w + k_side_gap_px;
  }
  if (!actions.quiet.id.empty()) {
    const float w = button_width(ui, face_of(actions.quiet, ButtonKind::quiet));
    plan.quiet = {x, top, w, button_height(ui, face_of(actions.quiet, ButtonKind::quiet), w)};
  }
  plan.height += std::max(plan.main.h, plan.quiet.h);
  plan.main.h = plan.main.w > 0 ? plan.height - top : 0;
  plan.quiet.h = plan.quiet.w > 0 ? plan.height - top : 0;
  return plan;
}

bool fits_side_by_side(Ui& ui, const Actions& actions, float width) {
  const bool both = !actions.main.id.empty() && !actions.quiet.id.empty();
  const float quiet =
      actions.quiet.id.empty() ? 0 : button_width(ui, face_of(actions.quiet, ButtonKind::quiet));
  const float main = actions.main.id.empty() ? 0 : main_width(ui, actions.main, width);
  return is_wide(ui) && main + quiet + (both ? k_side_gap_px : 0) <= width;
}

Plan plan_of(Ui& ui, const Actions& actions, float width) {
  return fits_side_by_side(ui, actions, width) ? side_by_side(ui, actions, width)
                                               : stacked(ui, actions, width);
}

bool draw_action(Ui& ui, const ActionButton& button, ButtonKind kind, Rect rect) {
  const Response answer = respond(ui, button.id, rect);
  draw_button_face(ui, face_of(button, kind), rect, answer);
  record(ui, {.id = button.id,
              .role = shell::Role::button,
              .name = button.label,
              .description = button.enabled ? "" : button.why_not,
              .disabled = !button.enabled,
              .rect = rect});
  if (answer.activated && !button.enabled) {
    ui.state().screen.told_why_not = button.why_not;
    if (!button.why_not.empty()) ui.say(button.why_not);
    want_frame(ui);
  }
  return answer.activated && button.enabled;
}

Rect moved(Rect rect, Rect by) { return {rect.x + by.x, rect.y + by.y, rect.w, rect.h}; }

}  // namespace

bool quiet_flows(Ui& ui, const Actions& actions, float width_px) {
  return !actions.main.id.empty() && !actions.quiet.id.empty() &&
         !fits_side_by_side(ui, actions, width_px);
}

float actions_height(Ui& ui, const Actions& actions, float width_px) {
  if (actions.main.enabled && !actions.main.id.empty()) ui.state().screen.told_why_not.clear();
  return plan_of(ui, actions, width_px).height;
}

ActionPress draw_actions(Ui& ui, const Actions& actions, Rect column) {
  const Plan plan = plan_of(ui, actions, column.w);
  auto press = ActionPress::none;
  if (plan.quiet.w > 0 &&
      draw_action(ui, actions.quiet, ButtonKind::quiet, moved(plan.quiet, column))) {
    press = ActionPress::quiet;
  }
  if (line_height(ui, actions, column.w) > 0) {
    const std::string& line = line_above(ui, actions);
    const TypeStyle type = line_type(ui, actions);
    const TextBlock& block = wrapped(ui, type, line, column.w);
    draw_text(ui, type, line, block,
              {.x = column.x, .y = column.y + plan.line_y, .colour = ui.palette().ink});
    record(ui, {.id = &line == &actions.note ? "action-note" : "why-not",
                .role = shell::Role::paragraph,
                .name = line,
                .rect = {column.x, column.y + plan.line_y, column.w, block.height}});
  }
  if (plan.main.w > 0 &&
      draw_action(ui, actions.main, ButtonKind::main, moved(plan.main, column))) {
    press = ActionPress::main;
  }
  return press;
}

}  // namespace rehale::kit
