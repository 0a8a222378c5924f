#include "web/kit/widget.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace rehale::kit {
namespace {

constexpr float k_forgiven_px = 24;  // how far a trembling finger may drift
constexpr double k_guard_ms = 400;   // a second touch sooner than this was not meant
// A finger that comes down so near to an edge may well mean what lies beyond it: it presses
// nothing, and comes again. 48 px always stay. facts/users.md 8, expectation 7;
// tests/browser/jitter_test.mjs.
constexpr float k_unsure_px = 8, k_sure_px = 48;
using Kind = shell::MirrorAction::Kind;

// A modal dialog hides all that is not in it from the pointer.
bool reachable(const State& s) { return s.dialog.inside || s.dialog.open_id.empty(); }

bool take_press(State& s, std::string_view id) {
  bool found = false;
  std::erase_if(s.actions, [&](const shell::MirrorAction& action) {
    const bool mine = action.kind == Kind::press && action.id == id;
    found = found || mine;
    return mine;
  });
  return found;
}

Rect surely_within(Rect hit) {
  const float x = std::clamp((hit.w - k_sure_px) / 2, 0.0F, k_unsure_px);
  const float y = std::clamp((hit.h - k_sure_px) / 2, 0.0F, k_unsure_px);
  return {hit.x + x, hit.y + y, hit.w - 2 * x, hit.h - 2 * y};
}

bool near_press(const State& s, Rect hit) {
  const float drift = std::hypot(s.pointer.x - s.press.x, s.pointer.y - s.press.y);
  return contains(hit, s.pointer.x, s.pointer.y) || drift <= k_forgiven_px;
}

bool released_on(State& s, Rect hit) {
  if (!s.pointer.released || !near_press(s, hit)) return false;
  if (s.pointer.touch && s.now_ms - s.last_activation_ms < k_guard_ms) return false;
  s.last_activation_ms = s.now_ms;
  return true;
}

}  // namespace

Rect place(Ui& ui, float height_px, float before_px) {
  Column& column = ui.state().column;
  if (!column.fresh) column.y += before_px;
  column.fresh = false;
  const Rect rect{column.x, std::round(column.y), column.width, std::ceil(height_px)};
  column.y = rect.y + rect.h;
  return rect;
}

float column_width(const Ui& ui) { return ui.state().column.width; }

Response respond(Ui& ui, std::string_view id, Rect rect, bool enabled) {
  State& s = ui.state();
  Response response;
  response.activated = take_press(s, id) && enabled;
  if (!enabled || !reachable(s)) return response;
  const Rect hit = s.clip_on ? intersection(rect, s.clip) : rect;
  const bool over = hit.h > 0 && contains(hit, s.pointer.x, s.pointer.y);
  const Rect meant = s.pointer.touch ? surely_within(hit) : hit;
  if (over && s.pointer.pressed && contains(meant, s.pointer.x, s.pointer.y)) {
    s.press.id = id;
    s.press.x = s.pointer.x;
    s.press.y = s.pointer.y;
  }
  response.hovered = over && !s.pointer.touch;
  if (s.press.id != id) return response;
  response.pressed = s.pointer.down && near_press(s, hit);
  if (released_on(s, hit)) response.activated = true;
  return response;
}

const double* number_given(const Ui& ui, std::string_view id) {
  const double* number = nullptr;
  for (const shell::MirrorAction& action : ui.state().actions) {
    if (action.kind == Kind::set_number && action.id == id) number = &action.number;
  }
  return number;
}

shell::MirrorNode& record(Ui& ui, shell::MirrorNode node) {
  State& s = ui.state();
  if (node.parent.empty()) node.parent = s.parent;
  if (s.clip_on) node.clip = s.clip;
  s.nodes.push_back(std::move(node));
  return s.nodes.back();
}

Inside::Inside(Ui& ui, std::string_view id)
    : ui_(ui), outer_(std::exchange(ui.state().parent, std::string(id))) {}

Inside::~Inside() { ui_.state().parent = std::move(outer_); }

void want_frame(Ui& ui) { ui.state().want_frame = true; }

std::string joined(std::string_view id, std::string_view part) {
  std::string whole(id);
  whole += '/';
  whole += part;
  return whole;
}

}  // namespace rehale::kit
