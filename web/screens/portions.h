// Long work in portions: small enough that the page answers in between, on slow devices too, and a
// word on how far it is a few times a second. Must not know what the work is, nor any clock.
#pragma once

#include <algorithm>
#include <cstddef>

namespace rehale::screens {

class Portions {
 public:
  // How many letters the next one should have.
  [[nodiscard]] std::size_t letters() const { return letters_; }

  // One was done from `from_ms` to `to_ms`. True: time to tell how far it is.
  bool took(double from_ms, double to_ms) {
    const double by = std::clamp(k_aim_ms / std::max(1.0, to_ms - from_ms), .5, 2.0);
    letters_ =
        std::clamp(static_cast<std::size_t>(static_cast<double>(letters_) * by), k_fewest, k_most);
    if (to_ms - told_ms_ < k_tell_ms && to_ms >= told_ms_) return false;
    told_ms_ = to_ms;
    return true;
  }

 private:
  static constexpr double k_aim_ms = 25, k_tell_ms = 250;  // below the 50 ms that can be felt
  static constexpr std::size_t k_fewest = 256, k_most = 16'384;
  std::size_t letters_ = 2048;
  double told_ms_ = 0;
};

}  // namespace rehale::screens
