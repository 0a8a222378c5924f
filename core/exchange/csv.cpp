#include "core/exchange/csv.h"

#include <algorithm>
#include <cmath>

namespace rehale::exchange {

namespace {

// The letter in front of all else that a spreadsheet may take for the start of a formula.
bool starts_a_formula(std::string_view cell) {
  std::size_t at = 0;
  while (at < cell.size() && static_cast<unsigned char>(cell[at]) <= 0x20) ++at;
  const std::string_view rest = cell.substr(at);
  if (rest.empty()) return false;
  // a tab or line end in front is enough (they start a cell of their own when pasted)
  if (at > 0 && cell.find_first_not_of(' ') < at) return true;
  constexpr std::string_view k_wide[] = {"\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D",
                                         "\xEF\xBC\xA0"};  // = + - @
  return std::string_view("=+-@").find(rest[0]) != std::string_view::npos ||
         std::ranges::any_of(k_wide, [rest](auto wide) { return rest.starts_with(wide); });
}

}  // namespace

void Csv::begin_cell() {
  if (in_row_) text_ += ',';
  in_row_ = true;
}

Csv& Csv::text(std::string_view cell) {
  begin_cell();
  std::string kept;
  if (starts_a_formula(cell)) kept = "'";
  for (const char c : cell) {
    if (c != '\0') kept += c;
  }
  const bool quoted = kept.find_first_of("\",\r\n") != std::string::npos;
  if (!quoted) {
    text_ += kept;
    return *this;
  }
  text_ += '"';
  for (const char c : kept) {
    if (c == '"') text_ += '"';
    text_ += c;
  }
  text_ += '"';
  return *this;
}

Csv& Csv::number(std::int64_t value) {
  begin_cell();
  text_ += std::to_string(value);
  return *this;
}

Csv& Csv::number(double value, int decimals) {
  begin_cell();
  text_ += fixed(value, decimals);
  return *this;
}

Csv& Csv::empty() {
  begin_cell();
  return *this;
}

Csv& Csv::end_row() {
  text_ += "\r\n";
  in_row_ = false;
  return *this;
}

std::string fixed(double value, int decimals) {
  if (!(std::abs(value) < 1e9)) return {};
  decimals = std::clamp(decimals, 0, 9);
  std::int64_t unit = 1;
  for (int n = 0; n < decimals; ++n) unit *= 10;
  const auto scaled = static_cast<std::int64_t>(std::llround(value * static_cast<double>(unit)));
  const std::int64_t whole = std::abs(scaled) / unit, part = std::abs(scaled) % unit;
  std::string text = scaled < 0 ? "-" : "";
  text += std::to_string(whole);
  if (decimals == 0) return text;
  const std::string digits = std::to_string(part);
  text += '.';
  text.append(static_cast<std::size_t>(decimals) - digits.size(), '0');
  return text += digits;
}

}  // namespace rehale::exchange
