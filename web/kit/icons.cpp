#include "web/kit/icons.h"

#include <imgui.h>

#include <algorithm>
#include <initializer_list>

#include "web/kit/paint.h"

namespace rehale::kit {
namespace {

constexpr float k_pi = 3.14159265F;

// A square of 24 units, as the icons are drawn on.
class Pen {
 public:
  Pen(ImDrawList* list, Rect rect, Colour colour)
      : list_(list), unit_(std::min(rect.w, rect.h) / 24), colour_(packed(colour)) {
    x_ = rect.x + rect.w / 2 - 12 * unit_;
    y_ = rect.y + rect.h / 2 - 12 * unit_;
  }
  ImVec2 at(float x, float y) const { return {x_ + x * unit_, y_ + y * unit_}; }
  void line(std::initializer_list<ImVec2> points, bool closed = false) {
    for (const ImVec2& p : points) list_->PathLineTo(at(p.x, p.y));
    list_->PathStroke(colour_, closed ? ImDrawFlags_Closed : ImDrawFlags_None, stroke());
    if (closed) return;
    dot(points.begin()->x, points.begin()->y, k_stroke / 2);
    const ImVec2& last = *(points.end() - 1);
    dot(last.x, last.y, k_stroke / 2);
  }
  void shape(std::initializer_list<ImVec2> points) {
    for (const ImVec2& p : points) list_->PathLineTo(at(p.x, p.y));
    list_->PathFillConcave(colour_);
  }
  void dot(float x, float y, float radius) {
    list_->AddCircleFilled(at(x, y), radius * unit_, colour_);
  }
  void circle(float x, float y, float radius) {
    list_->AddCircle(at(x, y), radius * unit_, colour_, 0, stroke());
  }
  void arc(ImVec2 middle, float radius, float from, float to) {
    list_->PathArcTo(at(middle.x, middle.y), radius * unit_, from * k_pi, to * k_pi);
    list_->PathStroke(colour_, ImDrawFlags_None, stroke());
  }
  // A filled leaf between two points, bulging by `bulge` units to each side.
  void leaf(ImVec2 from, ImVec2 to, float bulge) {
    const ImVec2 middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
    const ImVec2 side{(to.y - from.y) * bulge, (from.x - to.x) * bulge};
    list_->PathLineTo(at(from.x, from.y));
    list_->PathBezierQuadraticCurveTo(at(middle.x + side.x, middle.y + side.y), at(to.x, to.y));
    list_->PathBezierQuadraticCurveTo(at(middle.x - side.x, middle.y - side.y), at(from.x, from.y));
    list_->PathFillConvex(colour_);
  }
  void box(ImVec2 from, ImVec2 to, float corner) {
    list_->AddRectFilled(at(from.x, from.y), at(to.x, to.y), colour_, corner * unit_);
  }

 private:
  static constexpr float k_stroke = 2.6F;
  float stroke() const { return k_stroke * unit_; }
  ImDrawList* list_;
  float x_ = 0, y_ = 0, unit_;
  unsigned colour_;
};

void draw_help(Pen& pen) {
  pen.arc({12, 8.5F}, 5, -1.0F, 0.25F);
  pen.line({{15.4F, 12.1F}, {12.4F, 14.4F}, {12, 16}});
  pen.dot(7, 8.5F, 1.3F);
  pen.dot(12, 20.5F, 1.8F);
}

// A large and a small letter a, without a font.
void draw_look(Pen& pen) {
  pen.line({{1.5F, 20}, {7.5F, 4}, {13.5F, 20}});
  pen.line({{4, 14.5F}, {11, 14.5F}});
  pen.circle(18, 16, 3.6F);
  pen.line({{21.6F, 12.2F}, {21.6F, 20}});
}

void draw_sun(Pen& pen) {
  pen.dot(12, 12, 5);
  pen.line({{12, 1.8F}, {12, 3.6F}});
  pen.line({{12, 20.4F}, {12, 22.2F}});
  pen.line({{1.8F, 12}, {3.6F, 12}});
  pen.line({{20.4F, 12}, {22.2F, 12}});
  pen.line({{4.8F, 4.8F}, {6, 6}});
  pen.line({{18, 18}, {19.2F, 19.2F}});
  pen.line({{4.8F, 19.2F}, {6, 18}});
  pen.line({{18, 6}, {19.2F, 4.8F}});
}

void draw_moon(Pen& pen) {
  pen.arc({12, 12}, 9, 0.05F, 1.45F);
  pen.arc({15.6F, 8.4F}, 6.9F, 0.18F, 1.32F);
}

// A tick whose long arm is a leaf.
void draw_going_well(Pen& pen) {
  pen.line({{2.5F, 13.5F}, {8.5F, 20}});
  pen.leaf({8, 20.6F}, {22.5F, 3}, 0.34F);
}

// An open-ended spanner, jaw up and to the right.
void draw_to_mend(Pen& pen) {
  pen.line({{4, 20}, {12.5F, 11.5F}});
  pen.dot(4.2F, 19.8F, 2.4F);
  pen.arc({16, 8}, 5, 0.0F, 1.5F);
  pen.line({{16, 3}, {14.6F, 6}, {15.8F, 8.2F}, {18, 9.4F}, {21, 8}});
}

void draw_undo(Pen& pen) {
  pen.line({{8, 4}, {3.5F, 8.5F}, {8, 13}});
  pen.line({{4, 8.5F}, {14, 8.5F}});
  pen.arc({14, 14}, 5.5F, -0.5F, 0.5F);
  pen.line({{14, 19.5F}, {8, 19.5F}});
}

void draw_again(Pen& pen) {
  pen.arc({12, 12.5F}, 8.5F, -0.28F, 1.36F);
  pen.shape({{14.2F, 1.2F}, {20.8F, 5.6F}, {13.4F, 9}});
}

void draw_hand(Pen& pen) {
  pen.box({9, 1.5F}, {12.6F, 15}, 1.8F);
  pen.box({12.2F, 8}, {15.6F, 15}, 1.7F);
  pen.box({15.2F, 9.4F}, {18.4F, 15}, 1.6F);
  pen.box({18, 11}, {20.8F, 16}, 1.4F);
  pen.box({9, 12.5F}, {20.8F, 22.5F}, 4.5F);
  pen.line({{5, 12.6F}, {10.5F, 19}});
  pen.dot(5.2F, 12.8F, 1.7F);
}

void draw_caution(Pen& pen) {
  pen.line({{12, 3}, {22, 20.5F}, {2, 20.5F}}, true);
  pen.dot(12, 3.2F, 1.3F);
  pen.dot(21.8F, 20.4F, 1.3F);
  pen.dot(2.2F, 20.4F, 1.3F);
  pen.line({{12, 9.5F}, {12, 13.4F}});
  pen.dot(12, 17.2F, 1.5F);
}

void draw_speaker(Pen& pen) {
  pen.shape({{1.5F, 8.5F}, {6, 8.5F}, {12, 3}, {12, 21}, {6, 15.5F}, {1.5F, 15.5F}});
  pen.arc({12, 12}, 4.8F, -0.3F, 0.3F);
  pen.arc({12, 12}, 9.2F, -0.3F, 0.3F);
}

void draw_arrow(Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::back:
      pen.line({{11, 4}, {3, 12}, {11, 20}});
      return pen.line({{3.4F, 12}, {21, 12}});
    case Icon::up:
      pen.line({{4, 11}, {12, 3}, {20, 11}});
      return pen.line({{12, 3.4F}, {12, 21}});
    case Icon::down:
      pen.line({{4, 13}, {12, 21}, {20, 13}});
      return pen.line({{12, 20.6F}, {12, 3}});
    case Icon::chevron_right:
      return pen.line({{8.5F, 4}, {16.5F, 12}, {8.5F, 20}});
    case Icon::chevron_down:
      return pen.line({{4, 8.5F}, {12, 16.5F}, {20, 8.5F}});
    default:
      return;
  }
}

void draw_sign(Pen& pen, Icon icon) {
  switch (icon) {
    case Icon::plus:
      pen.line({{12, 3}, {12, 21}});
      return pen.line({{3, 12}, {21, 12}});
    case Icon::minus:
      return pen.line({{3, 12}, {21, 12}});
    case Icon::close:
      pen.line({{4, 4}, {20, 20}});
      return pen.line({{20, 4}, {4, 20}});
    case Icon::play:
      return pen.shape({{6, 3}, {21, 12}, {6, 21}});
    case Icon::stop:
      return pen.box({4, 4}, {20, 20}, 3);
    case Icon::ring:
      return pen.circle(12, 12, 9);
    default:
      return;
  }
}

}  // namespace

void draw_icon(ImDrawList* list, Icon icon, Rect rect, Colour colour) {
  Pen pen(list, rect, colour);
  switch (icon) {
    case Icon::help:
      return draw_help(pen);
    case Icon::look:
      return draw_look(pen);
    case Icon::sun:
      return draw_sun(pen);
    case Icon::moon:
      return draw_moon(pen);
    case Icon::going_well:
      return draw_going_well(pen);
    case Icon::to_mend:
      return draw_to_mend(pen);
    case Icon::undo:
      return draw_undo(pen);
    case Icon::again:
      return draw_again(pen);
    case Icon::hand:
      return draw_hand(pen);
    case Icon::caution:
      return draw_caution(pen);
    case Icon::speaker:
      return draw_speaker(pen);
    case Icon::plus:
    case Icon::minus:
    case Icon::close:
    case Icon::play:
    case Icon::stop:
    case Icon::ring:
      return draw_sign(pen, icon);
    default:
      return draw_arrow(pen, icon);
  }
}

}  // namespace rehale::kit
