#include "web/kit/type.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstring>

namespace rehale::kit {
namespace {

ImFont* font_of(const Ui& ui, Face face) { return ui.state().faces[static_cast<int>(face)]; }

float imgui_size(const Ui& ui, TypeStyle style) {
  return style.size_px * ui.state().em[static_cast<int>(style.face)];
}

// Bytes of a text after so many characters.
std::size_t after_characters(std::string_view text, int count) {
  std::size_t at = 0;
  while (at < text.size() && count-- > 0) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) ++at;
  }
  return at;
}

// Where the line that starts at `begin` ends, and where the next one starts.
struct Break {
  std::size_t end = 0, next = 0;
};

Break line_break(const Ui& ui, TypeStyle style, std::string_view text, float width_px) {
  const auto newline = text.find('\n');
  const std::string_view line = text.substr(0, newline);
  const char* from = line.data();
  const char* wrap =
      font_of(ui, style.face)
          ->CalcWordWrapPosition(imgui_size(ui, style), from, from + line.size(), width_px);
  auto end = static_cast<std::size_t>(wrap - from);
  const std::size_t longest = after_characters(line, k_line_chars);
  if (end > longest) {
    const auto space = line.rfind(' ', longest);
    if (space != line.npos && space > 0) end = space;
  }
  // Dear ImGui breaks after a full stop inside a number ("3.|7"); a word is kept whole where it can
  // be.
  if (end > 0 && end < line.size() && line[end - 1] != ' ' && line[end] != ' ') {
    const auto space = line.rfind(' ', end);
    if (space != line.npos && space > 0) end = space;
  }
  if (end == 0 && !line.empty()) end = after_characters(line, 1);
  if (end == line.size()) return {end, std::min(text.size(), end + 1)};
  std::size_t next = end;
  while (next < line.size() && line[next] == ' ') ++next;
  while (end > 0 && line[end - 1] == ' ') --end;
  return {end, next};
}

TextBlock lay_out(const Ui& ui, TypeStyle style, std::string_view text, float width_px) {
  TextBlock block;
  block.line_px = std::round(style.size_px * k_line_height);
  std::size_t at = 0;
  while (at < text.size()) {
    const Break found = line_break(ui, style, text.substr(at), width_px);
    const float width = text_width(ui, style, text.substr(at, found.end));
    block.lines.push_back({at, at + found.end, width});
    block.width = std::max(block.width, width);
    at += std::max<std::size_t>(found.next, 1);
  }
  block.height = block.line_px * static_cast<float>(std::max<std::size_t>(block.lines.size(), 1));
  return block;
}

std::string cache_key(TypeStyle style, std::string_view text, float width_px) {
  std::string key(text);
  const float numbers[2] = {style.size_px, std::floor(width_px)};
  char bytes[sizeof numbers];
  std::memcpy(bytes, numbers, sizeof numbers);
  key.append(bytes, sizeof bytes);
  key.push_back(static_cast<char>(style.face));
  return key;
}

// A line may end at a space, a line break or a hyphen.
bool ends_in_a_word(std::string_view text, std::size_t end) {
  if (end == 0 || end >= text.size()) return false;
  return text[end] != ' ' && text[end] != '\n' && text[end - 1] != ' ' && text[end - 1] != '-';
}

void note_drawn(Ui& ui, std::string_view text, const TextBlock& block, Rect rect) {
  State& s = ui.state();
  DrawnText drawn{.words = std::string(text), .rect = rect, .clip = s.clip_on ? s.clip : Rect{}};
  for (const TextBlock::Line& line : block.lines) {
    drawn.breaks_a_word = drawn.breaks_a_word || ends_in_a_word(text, line.end);
  }
  s.texts.push_back(drawn);
}

}  // namespace

float scaled(const Ui& ui, float px) { return std::round(px * ui.text_scale()); }

float roomy(const Ui& ui, float px) { return std::round(px * (1 + (ui.text_scale() - 1) * 0.25F)); }

TypeStyle body_type(const Ui& ui) { return {Face::regular, scaled(ui, k_body_px)}; }
TypeStyle bold_type(const Ui& ui) { return {Face::bold, scaled(ui, k_body_px)}; }
TypeStyle caption_type(const Ui& ui, Face face) { return {face, scaled(ui, k_caption_px)}; }

TypeStyle fitted(const Ui& ui, TypeStyle style, std::string_view text, float width_px) {
  float longest = 0;
  while (!text.empty()) {
    const auto space = std::min(text.find_first_of(" \n"), text.size());
    longest = std::max(longest, text_width(ui, style, text.substr(0, space)));
    text.remove_prefix(std::min(space + 1, text.size()));
  }
  if (longest <= width_px) return style;
  const float smaller = std::floor(style.size_px * width_px / longest) - 1;
  return {style.face, std::max(k_caption_px, smaller)};
}

TypeStyle fitted_in(Ui& ui, TypeStyle style, std::string_view text, Rect room) {
  TypeStyle fit = fitted(ui, style, text, room.w);
  while (fit.size_px > k_caption_px) {
    const TextBlock& block = wrapped(ui, fit, text, room.w);
    const float spare = block.line_px - fit.size_px;  // between lines, not above and below them
    if (block.height - spare <= room.h) break;
    fit.size_px -= 1;
  }
  return fit;
}

float text_width(const Ui& ui, TypeStyle style, std::string_view text) {
  if (text.empty()) return 0;
  const char* from = text.data();
  return font_of(ui, style.face)
      ->CalcTextSizeA(imgui_size(ui, style), 1e9F, 0, from, from + text.size())
      .x;
}

float average_char_px(const Ui& ui, TypeStyle style) {
  constexpr std::string_view k_sample = "Breathe out first, away from it, slowly and gently.";
  return text_width(ui, style, k_sample) / static_cast<float>(k_sample.size());
}

const TextBlock& wrapped(Ui& ui, TypeStyle style, std::string_view text, float width_px) {
  auto& cache = ui.state().text_cache;
  std::string key = cache_key(style, text, width_px);
  const auto known = cache.find(key);
  if (known != cache.end()) return known->second;
  return cache.emplace(std::move(key), lay_out(ui, style, text, width_px)).first->second;
}

void draw_text(Ui& ui, TypeStyle style, std::string_view text, const TextBlock& block,
               const TextPlace& place) {
  const float size = imgui_size(ui, style);
  const float drop = (block.line_px - size) / 2;
  float y = place.y;
  const float indent = place.align == Align::middle ? (place.width - block.width) / 2 : 0;
  note_drawn(ui, text, block, {place.x + indent, y + drop, block.width, block.height - 2 * drop});
  for (const TextBlock::Line& line : block.lines) {
    const float push = place.align == Align::middle ? (place.width - line.width) / 2 : 0;
    ui.draw_list()->AddText(font_of(ui, style.face), size, {place.x + push, y + drop},
                            IM_COL32(place.colour.r, place.colour.g, place.colour.b, 255),
                            text.data() + line.begin, text.data() + line.end);
    y += block.line_px;
  }
}

}  // namespace rehale::kit
