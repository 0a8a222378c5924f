// Calendar days as whole numbers: days since 1970-01-01, proleptic Gregorian calendar, no time
// zones. Must not know clocks: today comes in as a number. Rule: 400 years have 146,097 days; a
// year counted from March ends with the leap day. Checked against Python's datetime
// (tests/reference/civil).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rehale {

using Day = std::int32_t;

// Dates that may stand in files and codes: 1970-01-01 to 9999-12-31.
inline constexpr Day k_first_day = 0, k_last_day = 2932896;

struct Civil {
  int year = 1970, month = 1, day = 1;  // month 1-12, day 1-31

  friend constexpr bool operator==(const Civil&, const Civil&) = default;
};

[[nodiscard]] constexpr Day day_of(const Civil& date) {
  const int year = date.month <= 2 ? date.year - 1 : date.year;  // counted from March
  const int era = (year >= 0 ? year : year - 399) / 400;
  const int year_of_era = year - era * 400;
  const int month = (date.month + 9) % 12;  // March is 0
  const int day_of_year = (153 * month + 2) / 5 + date.day - 1;
  const int day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
  return era * 146097 + day_of_era - 719468;
}

[[nodiscard]] constexpr Civil civil_of(Day day) {
  const int shifted = day + 719468;
  const int era = (shifted >= 0 ? shifted : shifted - 146096) / 146097;
  const int day_of_era = shifted - era * 146097;
  const int year_of_era =
      (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  const int day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const int month = (5 * day_of_year + 2) / 153;
  const int civil_month = month < 10 ? month + 3 : month - 9;
  return {year_of_era + era * 400 + (civil_month <= 2 ? 1 : 0), civil_month,
          day_of_year - (153 * month + 2) / 5 + 1};
}

// 28-31; month 1-12.
[[nodiscard]] constexpr int days_in_month(int year, int month) {
  const Day first = day_of({year, month, 1});
  return static_cast<int>((month == 12 ? day_of({year + 1, 1, 1}) : day_of({year, month + 1, 1})) -
                          first);
}

// The same day of a later month (months >= 0); where that month is shorter, its last day.
[[nodiscard]] constexpr Day add_months(Day day, int months) {
  const Civil from = civil_of(day);
  const int month = from.month - 1 + months;
  Civil to{from.year + month / 12, month % 12 + 1, from.day};
  const int last = days_in_month(to.year, to.month);
  if (to.day > last) to.day = last;
  return day_of(to);
}

// "2026-11-25" (ISO 8601). Days outside [k_first_day, k_last_day] give "".
[[nodiscard]] inline std::string iso_date(Day day) {
  if (day < k_first_day || day > k_last_day) return {};
  const Civil date = civil_of(day);
  std::string text = "0000-00-00";
  const auto put = [&text](std::size_t end, int value) {
    for (; value > 0; value /= 10) text[--end] = static_cast<char>('0' + value % 10);
  };
  put(4, date.year);
  put(7, date.month);
  put(10, date.day);
  return text;
}

// Only that very form, only days there are; else nothing.
[[nodiscard]] inline std::optional<Day> read_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return {};
  int parts[3] = {0, 0, 0};
  for (std::size_t n = 0; n < text.size(); ++n) {
    if (n == 4 || n == 7) continue;
    if (text[n] < '0' || text[n] > '9') return {};
    int& part = parts[n < 4 ? 0 : n < 7 ? 1 : 2];
    part = part * 10 + (text[n] - '0');
  }
  const auto& [year, month, day] = parts;
  if (year < 1970 || month < 1 || month > 12 || day < 1 || day > days_in_month(year, month))
    return {};
  return day_of({year, month, day});
}

}  // namespace rehale
