#include "tests/web/raster.h"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace rehale::raster {
namespace {

struct Vertex {
  float x = 0, y = 0, u = 0, v = 0;
  std::array<float, 4> rgba{};
};

struct Clip {
  int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
};

struct Texture {
  const ImTextureData* data = nullptr;
  float alpha(int x, int y) const {
    x = std::clamp(x, 0, data->Width - 1);
    y = std::clamp(y, 0, data->Height - 1);
    const std::size_t at = static_cast<std::size_t>(y) * static_cast<std::size_t>(data->Width) +
                           static_cast<std::size_t>(x);
    const auto bytes = static_cast<std::size_t>(data->BytesPerPixel);
    return static_cast<float>(data->Pixels[at * bytes + bytes - 1]) / 255;
  }
  float sample(float u, float v) const {
    const float x = u * static_cast<float>(data->Width) - 0.5F;
    const float y = v * static_cast<float>(data->Height) - 0.5F;
    const float fx = x - std::floor(x), fy = y - std::floor(y);
    const int ix = static_cast<int>(std::floor(x)), iy = static_cast<int>(std::floor(y));
    return (alpha(ix, iy) * (1 - fx) + alpha(ix + 1, iy) * fx) * (1 - fy) +
           (alpha(ix, iy + 1) * (1 - fx) + alpha(ix + 1, iy + 1) * fx) * fy;
  }
};

Texture texture_of(ImTextureID id) {
  for (const ImTextureData* data : ImGui::GetPlatformIO().Textures) {
    if (data->TexID == id) return {data};
  }
  return {};
}

Vertex vertex_of(const ImDrawVert& from, float density) {
  Vertex v{from.pos.x * density, from.pos.y * density, from.uv.x, from.uv.y, {}};
  for (unsigned n = 0; n < 4; ++n) {
    v.rgba[n] = static_cast<float>(from.col >> (8 * n) & 255U) / 255;
  }
  return v;
}

float edge(const Vertex& a, const Vertex& b, float x, float y) {
  return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
}

void blend(Image& image, int x, int y, const std::array<float, 4>& rgba) {
  const std::size_t at = 3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(image.width) +
                              static_cast<std::size_t>(x));
  for (unsigned n = 0; n < 3; ++n) {
    const float under = static_cast<float>(image.rgb[at + n]) / 255;
    const float mixed = under + (rgba[n] - under) * rgba[3];
    image.rgb[at + n] = static_cast<std::uint8_t>(std::lround(mixed * 255));
  }
}

// A pixel centre exactly on an edge belongs to one triangle only: top and left edges.
bool inside(float weight, const Vertex& a, const Vertex& b) {
  if (weight != 0) return weight > 0;
  return a.y == b.y ? b.x < a.x : b.y > a.y;
}

struct Triangle {
  Vertex a, b, c;
};

void fill(Image& image, Triangle t, const Texture& texture, Clip clip) {
  float area = edge(t.a, t.b, t.c.x, t.c.y);
  if (area == 0) return;
  if (area < 0) {
    std::swap(t.b, t.c);
    area = -area;
  }
  const auto low = [](float p, float q, float r) {
    return static_cast<int>(std::floor(std::min({p, q, r})));
  };
  const auto high = [](float p, float q, float r) {
    return static_cast<int>(std::ceil(std::max({p, q, r})));
  };
  for (int y = std::max(clip.y0, low(t.a.y, t.b.y, t.c.y));
       y < std::min(clip.y1, high(t.a.y, t.b.y, t.c.y)); ++y) {
    for (int x = std::max(clip.x0, low(t.a.x, t.b.x, t.c.x));
         x < std::min(clip.x1, high(t.a.x, t.b.x, t.c.x)); ++x) {
      const float px = static_cast<float>(x) + 0.5F, py = static_cast<float>(y) + 0.5F;
      const float wa = edge(t.b, t.c, px, py), wb = edge(t.c, t.a, px, py),
                  wc = edge(t.a, t.b, px, py);
      if (!inside(wa, t.b, t.c) || !inside(wb, t.c, t.a) || !inside(wc, t.a, t.b)) continue;
      const auto mix = [&](float p, float q, float r) { return (wa * p + wb * q + wc * r) / area; };
      std::array<float, 4> rgba{};
      for (unsigned n = 0; n < 4; ++n) rgba[n] = mix(t.a.rgba[n], t.b.rgba[n], t.c.rgba[n]);
      rgba[3] *= texture.sample(mix(t.a.u, t.b.u, t.c.u), mix(t.a.v, t.b.v, t.c.v));
      blend(image, x, y, rgba);
    }
  }
}

Clip clip_of(const ImDrawCmd& command, const Image& image, float density) {
  const auto scaled = [density](float v) { return static_cast<int>(std::lround(v * density)); };
  return {std::max(0, scaled(command.ClipRect.x)), std::max(0, scaled(command.ClipRect.y)),
          std::min(image.width, scaled(command.ClipRect.z)),
          std::min(image.height, scaled(command.ClipRect.w))};
}

void paint_list(Image& image, const ImDrawList& list, float density) {
  for (const ImDrawCmd& command : list.CmdBuffer) {
    const Texture texture = texture_of(command.GetTexID());
    if (texture.data == nullptr || texture.data->Pixels == nullptr) continue;
    const auto corner = [&](unsigned n) {
      const ImDrawIdx index = list.IdxBuffer[static_cast<int>(command.IdxOffset + n)];
      return vertex_of(list.VtxBuffer[static_cast<int>(command.VtxOffset + index)], density);
    };
    for (unsigned n = 0; n + 2 < command.ElemCount; n += 3) {
      fill(image, {corner(n), corner(n + 1), corner(n + 2)}, texture,
           clip_of(command, image, density));
    }
  }
}

std::uint32_t crc_of(const std::string& bytes) {
  std::uint32_t crc = 0xFFFFFFFFU;
  for (const char byte : bytes) {
    crc ^= static_cast<unsigned char>(byte);
    for (int n = 0; n < 8; ++n) crc = (crc & 1U) != 0 ? crc >> 1 ^ 0xEDB88320U : crc >> 1;
  }
  return ~crc;
}

std::string big_endian(std::uint32_t value) {
  return {static_cast<char>(value >> 24), static_cast<char>(value >> 16),
          static_cast<char>(value >> 8), static_cast<char>(value)};
}

std::string chunk(const std::string& kind, const std::string& data) {
  return big_endian(static_cast<std::uint32_t>(data.size())) + kind + data +
         big_endian(crc_of(kind + data));
}

// A zlib stream that does not compress.
std::string stored(const std::string& raw) {
  std::string out("\x78\x01");
  std::uint32_t a = 1, b = 0;
  for (const char byte : raw) {
    a = (a + static_cast<unsigned char>(byte)) % 65521;
    b = (b + a) % 65521;
  }
  for (std::size_t at = 0; at < raw.size(); at += 65535) {
    const auto size = static_cast<unsigned>(std::min<std::size_t>(65535, raw.size() - at));
    out += static_cast<char>(at + size == raw.size() ? 1 : 0);
    for (const unsigned length : {size, ~size}) {
      out += static_cast<char>(length & 255U);
      out += static_cast<char>(length >> 8 & 255U);
    }
    out += raw.substr(at, size);
  }
  return out + big_endian(b << 16 | a);
}

}  // namespace

Image paint(const ImDrawData& data, float density) {
  Image image;
  image.width = static_cast<int>(std::lround(data.DisplaySize.x * density));
  image.height = static_cast<int>(std::lround(data.DisplaySize.y * density));
  image.rgb.resize(3 * static_cast<std::size_t>(image.width) *
                   static_cast<std::size_t>(image.height));
  for (const ImDrawList* list : data.CmdLists) paint_list(image, *list, density);
  return image;
}

bool write_png(const std::string& path, const Image& image) {
  std::string raw;
  const auto row = 3 * static_cast<std::size_t>(image.width);
  for (std::size_t y = 0; y < static_cast<std::size_t>(image.height); ++y) {
    raw += '\0';
    raw.append(reinterpret_cast<const char*>(image.rgb.data()) + y * row, row);
  }
  const std::string header = big_endian(static_cast<std::uint32_t>(image.width)) +
                             big_endian(static_cast<std::uint32_t>(image.height)) +
                             std::string("\x08\x02\0\0\0", 5);
  const std::string png = std::string("\x89PNG\r\n\x1a\n") + chunk("IHDR", header) +
                          chunk("IDAT", stored(raw)) + chunk("IEND", "");
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool written = std::fwrite(png.data(), 1, png.size(), file) == png.size();
  return std::fclose(file) == 0 && written;
}

}  // namespace rehale::raster
