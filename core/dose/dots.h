// A dose as 100 dots: whole numbers for a picture. Must not know how they are drawn.
#pragma once

#include <array>

#include "core/dose/technique.h"

namespace rehale::dose {

inline constexpr int k_places = 5;  // in the order of Fractions: device, mouth, airways, deep, out

// Always exactly 100, each within 1 of its share: largest remainder, the earlier place first among
// equals. Shares that do not add to 1 are taken in proportion; none at all: all in the device.
[[nodiscard]] std::array<int, k_places> hundred_dots(const Fractions& shares);

}  // namespace rehale::dose
