// Where a dose goes, drawn: an outline of head and chest, the device at the mouth, and 100 dots
// that landed. Each place has a dot shape of its own, so that nothing is told by colour alone. And
// the same as a table. Must not know doses, devices, screens.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

// Square, ring, triangle, disc, diamond.
enum class DotPlace : unsigned char { device, mouth, airways, lungs, air };
inline constexpr int k_dot_places = 5;

struct Body {
  std::string label;  // above it: "Your puff"
  std::array<int, k_dot_places> dots{};
};
struct Bodies {
  std::vector<Body> bodies;  // side by side, at the same scale
  std::string note;          // below them: "Teaching estimate"
};
// For a Picture: dots lie where a fixed seed puts them, the same ones every time.
void draw_bodies(Ui& ui, Rect rect, const Bodies& bodies);

// One dot of that place, at a size for a line of words.
void draw_dot(Ui& ui, DotPlace place, float x, float y, float radius);

// A real table in the mirror: one row a place, one column a body.
struct DotsTable {
  std::string id;
  std::string name;                // of the table
  std::vector<std::string> heads;  // "Where", "Your puff", "A good puff"
  std::array<std::string, k_dot_places> places;
  std::vector<std::array<int, k_dot_places>> columns;
};
void dots_table(Ui& ui, const DotsTable& table);

}  // namespace rehale::kit
