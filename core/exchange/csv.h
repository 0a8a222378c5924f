// Tables as CSV (RFC 4180) that spreadsheets open safely: UTF-8 with a byte order mark, CRLF, and
// no text that a spreadsheet would take for a formula. Must not know what the table says.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace rehale::exchange {

class Csv {
 public:
  Csv() : text_("\xEF\xBB\xBF") {}

  // A text that starts like a formula (= + - @, their wide forms, after spaces or control
  // characters too) gets an apostrophe in front, which spreadsheets take as "this is text".
  Csv& text(std::string_view cell);
  Csv& number(std::int64_t value);
  Csv& number(double value, int decimals);  // decimals 0-9; rounded half away from 0
  Csv& empty();
  Csv& end_row();

  [[nodiscard]] const std::string& str() const { return text_; }

 private:
  void begin_cell();

  std::string text_;
  bool in_row_ = false;
};

// "-0.050"; nothing for what is no number or too large (|value| >= 1e9).
[[nodiscard]] std::string fixed(double value, int decimals);

}  // namespace rehale::exchange
