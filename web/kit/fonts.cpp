// Reads the two faces. Dear ImGui sizes a font by ascent + descent; the kit speaks of em sizes as
// CSS does, so the ratio is read from the font's own head and hhea tables. Must not know widgets.
#include <imgui.h>

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <string_view>

#include "web/kit/state.h"

namespace rehale::kit {
namespace {

unsigned u16(std::string_view bytes, std::size_t at) {
  if (at + 2 > bytes.size()) return 0;
  return static_cast<unsigned char>(bytes[at]) * 256U + static_cast<unsigned char>(bytes[at + 1]);
}

std::size_t u32(std::string_view bytes, std::size_t at) {
  return std::size_t{u16(bytes, at)} * 65536U + u16(bytes, at + 2);
}

int i16(std::string_view bytes, std::size_t at) {
  return static_cast<std::int16_t>(u16(bytes, at));
}

std::size_t table(std::string_view ttf, std::string_view tag) {
  const unsigned tables = u16(ttf, 4);
  for (unsigned n = 0; n < tables; ++n) {
    const std::size_t entry = 12 + 16 * std::size_t{n};
    if (ttf.substr(std::min(entry, ttf.size()), 4) == tag) return u32(ttf, entry + 8);
  }
  return 0;
}

// (ascent - descent) / units per em; 0 when the file is no such font.
float height_per_em(std::string_view ttf) {
  const std::size_t head = table(ttf, "head");
  const std::size_t hhea = table(ttf, "hhea");
  if (head == 0 || hhea == 0) return 0;
  const unsigned units = u16(ttf, head + 18);
  const int height = i16(ttf, hhea + 4) - i16(ttf, hhea + 6);
  if (units < 16 || height <= 0) return 0;
  return static_cast<float>(height) / static_cast<float>(units);
}

ImFont* add_face(std::string_view ttf) {
  void* copy = IM_ALLOC(ttf.size());
  std::memcpy(copy, ttf.data(), ttf.size());
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(copy, static_cast<int>(ttf.size()), k_body_px);
}

}  // namespace

bool Ui::load_fonts(std::string_view regular_ttf, std::string_view bold_ttf) {
  const std::string_view files[2] = {regular_ttf, bold_ttf};
  for (int face = 0; face < 2; ++face) {
    state_->em[face] = height_per_em(files[face]);
    if (state_->em[face] <= 0) return false;
    state_->faces[face] = add_face(files[face]);
    if (state_->faces[face] == nullptr) return false;
  }
  state_->text_cache.clear();
  return true;
}

}  // namespace rehale::kit
