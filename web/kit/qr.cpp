#include "web/kit/qr.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "web/kit/widget.h"
#include "web/shell/host.h"

namespace rehale::kit {
namespace {

constexpr int k_quiet_modules = 4;
constexpr float k_widest_px = 480;
constexpr ImU32 k_black = IM_COL32(0, 0, 0, 255), k_white = IM_COL32(255, 255, 255, 255);

struct Grid {
  int side = 0;
  float module_px = 1, density = 1;
};

Grid grid_of(const Ui& ui, std::string_view lines) {
  Grid grid;
  grid.side = static_cast<int>(std::min(lines.find('\n'), lines.size()));
  grid.density = std::max(shell::viewport().density, 1.0F);
  const float room = std::min(column_width(ui), k_widest_px) * grid.density;
  const auto modules = static_cast<float>(grid.side + 2 * k_quiet_modules);
  grid.module_px = std::max(std::floor(room / modules), 1.0F) / grid.density;
  return grid;
}

// Runs of dark modules, a rectangle each.
void draw_modules(ImDrawList* list, std::string_view lines, const Grid& grid, ImVec2 at) {
  float y = at.y;
  for (std::size_t first = 0; first < lines.size(); y += grid.module_px) {
    const std::size_t end = std::min(lines.find('\n', first), lines.size());
    for (std::size_t n = first; n < end;) {
      const std::size_t from = n;
      while (n < end && lines[n] == lines[from]) ++n;
      if (lines[from] != '1') continue;
      const float x = at.x + grid.module_px * static_cast<float>(from - first);
      const float far = at.x + grid.module_px * static_cast<float>(n - first);
      list->AddRectFilled({x, y}, {far, y + grid.module_px}, k_black);
    }
    first = end + 1;
  }
}

}  // namespace

void qr_code(Ui& ui, const QrCode& code) {
  const Grid grid = grid_of(ui, code.lines);
  const float side = grid.module_px * static_cast<float>(grid.side + 2 * k_quiet_modules);
  const Rect row = place(ui, side + 1, 16);
  const auto whole = [&grid](float px) { return std::round(px * grid.density) / grid.density; };
  const ImVec2 at{whole(row.x), whole(row.y)};
  ImDrawList* list = ui.draw_list();
  list->AddRectFilled(at, {at.x + side, at.y + side}, k_white);
  const float quiet = grid.module_px * k_quiet_modules;
  draw_modules(list, code.lines, grid, {at.x + quiet, at.y + quiet});
  record(ui, {.id = code.id,
              .role = shell::Role::image,
              .name = code.alternative,
              .rect = {at.x, at.y, side, side}});
}

}  // namespace rehale::kit
