#include "web/shell/short_decimal.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace rehale::shell {
namespace {

constexpr int k_most_digits = 15, k_most_power = 22;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Cuts digits off `text` and puts them behind those of `value`. How many there were.
int take_digits(std::string_view& text, double& value) {
  int count = 0;
  while (!text.empty() && is_digit(text.front())) {
    value = value * 10 + (text.front() - '0');
    text.remove_prefix(1);
    ++count;
  }
  return count;
}

bool take(std::string_view& text, char wanted) {
  if (text.empty() || text.front() != wanted) return false;
  text.remove_prefix(1);
  return true;
}

// "e-3" -> -3; nullopt when it is cut short.
std::optional<int> take_power(std::string_view& text) {
  if (!take(text, 'e') && !take(text, 'E')) return 0;
  const bool minus = take(text, '-');
  if (!minus) take(text, '+');
  double power = 0;
  const int digits = take_digits(text, power);
  if (digits == 0 || digits > 3) return std::nullopt;
  return minus ? -static_cast<int>(power) : static_cast<int>(power);
}

}  // namespace

std::optional<double> read_short_decimal(std::string_view text) {
  const bool minus = take(text, '-');
  double value = 0;
  int digits = take_digits(text, value);
  if (digits == 0) return std::nullopt;
  int places = 0;
  if (take(text, '.')) {
    places = take_digits(text, value);
    if (places == 0) return std::nullopt;
    digits += places;
  }
  const auto written = take_power(text);
  if (!written || !text.empty() || digits > k_most_digits) return std::nullopt;
  const int power = *written - places;
  if (power > k_most_power || power < -k_most_power) return std::nullopt;
  double scale = 1;
  for (int n = 0; n < (power < 0 ? -power : power); ++n) scale *= 10;
  value = power < 0 ? value / scale : value * scale;
  return minus ? -value : value;
}

std::string short_decimal(double value, int places) {
  constexpr double k_most = 1e9;
  const double shown = std::isnan(value) ? 0 : std::clamp(value, -k_most, k_most);
  std::int64_t one = 1;
  for (int n = 0; n < places; ++n) one *= 10;
  const auto parts =
      static_cast<std::int64_t>(std::round(std::fabs(shown) * static_cast<double>(one)));
  std::string text = shown < 0 && parts > 0 ? "-" : "";
  text += std::to_string(parts / one);
  if (parts % one == 0) return text;
  text += '.';
  text += std::to_string(one + parts % one).substr(1);  // with the zeros in front
  text.erase(text.find_last_not_of('0') + 1);
  return text;
}

}  // namespace rehale::shell
