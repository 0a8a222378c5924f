// Decimal numbers as people write them ("0.35", "-12", "4e3"), read exactly and written, with
// little code: the C library's would travel before the first question. Must not know the browser.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rehale::shell {

// The double nearest to `text`; nullopt for what needs a longer way: more than 15 digits, a power
// of ten beyond 22, or no plain decimal number. Exact for all others: both the digits and the power
// of ten are doubles then, and one division or product of the two rounds once (Clinger 1990, "How
// to read floating point numbers accurately", its fast case).
[[nodiscard]] std::optional<double> read_short_decimal(std::string_view text);

// Rounded to at most `places` (0 to 6) behind the point, no zeros at the end: 2.50 -> "2.5",
// 3 -> "3". Within 1e9; anything beyond, and what is no number, as the nearest that is (0 for NaN).
[[nodiscard]] std::string short_decimal(double value, int places);

}  // namespace rehale::shell
