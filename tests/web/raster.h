// Paints Dear ImGui's draw data into an image on the CPU, so that a person (or a test) can look at
// what the kit draws without a browser. Native only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

struct ImDrawData;

namespace rehale::raster {

struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
};

// All of the last frame; density: device pixels a CSS px.
Image paint(const ImDrawData& data, float density);

bool write_png(const std::string& path, const Image& image);

}  // namespace rehale::raster
