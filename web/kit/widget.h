// What every widget does besides drawing: take its place in the flow, answer the pointer and the
// mirror, and tell what it is. For files of web/kit only. Must not know any one widget.
#pragma once

#include <string>
#include <string_view>

#include "web/kit/paint.h"
#include "web/kit/state.h"
#include "web/kit/type.h"

namespace rehale::kit {

// ---- place
// The next piece of the column, full width, `before_px` below the one above.
Rect place(Ui& ui, float height_px, float before_px);
float column_width(const Ui& ui);

// ---- answer
struct Response {
  bool activated = false;  // once, on release or through the mirror
  bool hovered = false;    // mouse only
  bool pressed = false;    // a press that would count if it ended now
};
// `enabled` false: nothing answers.
Response respond(Ui& ui, std::string_view id, Rect rect, bool enabled = true);
// The last number given to a spin through the mirror in this frame, if any.
const double* number_given(const Ui& ui, std::string_view id);

// ---- tell
// Parent and clip are filled in. Returns the node until the next one is recorded.
shell::MirrorNode& record(Ui& ui, shell::MirrorNode node);

// Nodes recorded while it lives are children of `id`.
class Inside {
 public:
  Inside(Ui& ui, std::string_view id);
  ~Inside();
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;

 private:
  Ui& ui_;
  std::string outer_;
};

// Ask for one more frame: something moves.
void want_frame(Ui& ui);

std::string joined(std::string_view id, std::string_view part);  // "order/shake"

}  // namespace rehale::kit
