#include "web/kit/text.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/kit/widget.h"

namespace rehale::kit {
namespace {

constexpr float k_section_px = 22;
constexpr float k_paragraph_gap_px = 16;

struct Line {
  TypeStyle type;
  Colour colour;
  float before_px = k_paragraph_gap_px;
};

Rect draw_words(Ui& ui, std::string_view text, const Line& line, float indent_px = 0) {
  const float width = column_width(ui) - indent_px;
  const TypeStyle type = fitted(ui, line.type, text, width);
  const TextBlock& block = wrapped(ui, type, text, width);
  const Rect rect = place(ui, block.height, line.before_px);
  draw_text(ui, type, text, block, {.x = rect.x + indent_px, .y = rect.y, .colour = line.colour});
  return {rect.x + indent_px, rect.y, std::max(block.width, 8.0F), rect.h};
}

// On narrow screens headings grow less than the words below them, or two words fill the screen.
float heading_px(const Ui& ui, float px) {
  if (ui.width_px() >= 480) return scaled(ui, px);
  return std::max(scaled(ui, k_body_px), std::round(px * (1 + (ui.text_scale() - 1) * 0.6F)));
}

TypeStyle heading_type(const Ui& ui, Heading kind) {
  switch (kind) {
    case Heading::title:
      return {Face::bold, heading_px(ui, k_title_px)};
    case Heading::question:
      return {Face::bold, heading_px(ui, k_question_px)};
    case Heading::section:
      break;
  }
  return {Face::bold, heading_px(ui, k_section_px)};
}

void tell_heading(Ui& ui, shell::MirrorNode node) {
  State& s = ui.state();
  const bool first = node.level == 1 && !s.screen.heading_seen && s.screen.open;
  const std::string id = node.id;
  record(ui, std::move(node));
  if (!first) return;
  s.screen.heading_seen = true;
  if (s.screen.focus_heading) ui.focus(id);
  for (auto& waiting : s.screen.waiting) s.nodes.push_back(std::move(waiting));
  s.screen.waiting.clear();
}

}  // namespace

void heading(Ui& ui, std::string_view id, std::string_view text, Heading kind) {
  const bool section = kind == Heading::section;
  const Line line{heading_type(ui, kind), ui.palette().ink, section ? 24.0F : 16.0F};
  const Rect rect = draw_words(ui, text, line);
  tell_heading(ui, {.id = std::string(id),
                    .role = shell::Role::heading,
                    .name = std::string(text),
                    .level = section ? 2 : 1,
                    .rect = rect});
}

void paragraph(Ui& ui, std::string_view id, std::string_view text, Ink ink) {
  const Palette& p = ui.palette();
  const Rect rect = draw_words(ui, text, {body_type(ui), ink == Ink::full ? p.ink : p.soft_ink});
  record(ui, {.id = std::string(id),
              .role = shell::Role::paragraph,
              .name = std::string(text),
              .rect = rect});
}

void caption(Ui& ui, std::string_view id, std::string_view text) {
  const Rect rect = draw_words(ui, text, {caption_type(ui), ui.palette().soft_ink, 8});
  record(ui, {.id = std::string(id),
              .role = shell::Role::paragraph,
              .name = std::string(text),
              .rect = rect});
}

void bullets(Ui& ui, std::string_view id, const std::vector<std::string>& lines) {
  const float indent = scaled(ui, 24);
  const Column& column = ui.state().column;
  const Rect top{column.x, column.y, column.width, 0};
  const std::size_t list = ui.state().nodes.size();
  record(ui, {.id = std::string(id), .role = shell::Role::list, .rect = top});
  const Inside inside(ui, id);
  for (std::size_t n = 0; n < lines.size(); ++n) {
    const Rect rect =
        draw_words(ui, lines[n], {body_type(ui), ui.palette().ink, n == 0 ? 16.0F : 8.0F}, indent);
    const float middle = rect.y + body_type(ui).size_px * k_line_height / 2;
    ui.draw_list()->AddCircleFilled({rect.x - indent + scaled(ui, 8), middle}, scaled(ui, 4),
                                    packed(ui.palette().main));
    record(ui, {.id = joined(id, std::to_string(n)),
                .role = shell::Role::list_item,
                .name = lines[n],
                .position = static_cast<int>(n) + 1,
                .set_size = static_cast<int>(lines.size()),
                .rect = rect});
  }
  ui.state().nodes[list].rect.h = column.y - top.y;
}

void status_line(Ui& ui, std::string_view id, std::string_view text) {
  const Rect rect =
      text.empty() ? place(ui, 0, 0) : draw_words(ui, text, {body_type(ui), ui.palette().ink, 12});
  record(ui, {.id = std::string(id),
              .role = shell::Role::status,
              .name = std::string(text),
              .rect = rect});
}

void skeleton(Ui& ui, std::string_view id, std::string_view text) {
  const Palette& p = ui.palette();
  paragraph(ui, id, text, Ink::soft);
  for (const float share : {1.0F, 1.0F, 0.6F}) {
    const Rect row = place(ui, k_answer_px, 12);
    fill_box(ui.draw_list(), {row.x, row.y, std::round(row.w * share), row.h}, p.row_press,
             k_corner_px);
  }
}

}  // namespace rehale::kit
