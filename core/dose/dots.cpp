#include "core/dose/dots.h"

#include <cstddef>

namespace rehale::dose {

std::array<int, k_places> hundred_dots(const Fractions& shares) {
  std::array<double, k_places> rest{shares.device, shares.mouth_throat, shares.conducting,
                                    shares.alveolar, shares.exhaled};
  double sum = 0;
  for (double& share : rest) {
    share = share > 0 ? share : 0;  // rounding may leave a hair below 0; NaN counts as none
    sum += share;
  }
  std::array<int, k_places> dots{};
  if (!(sum > 0)) {
    dots[0] = 100;
    return dots;
  }
  int left = 100;
  for (std::size_t i = 0; i < rest.size(); ++i) {
    const double exact = 100 * rest[i] / sum;
    dots[i] = static_cast<int>(exact);
    rest[i] = exact - dots[i];
    left -= dots[i];
  }
  for (; left > 0; --left) {
    std::size_t most = 0;
    for (std::size_t i = 1; i < rest.size(); ++i) {
      if (rest[i] > rest[most]) most = i;
    }
    ++dots[most];
    rest[most] = -1;
  }
  return dots;
}

}  // namespace rehale::dose
