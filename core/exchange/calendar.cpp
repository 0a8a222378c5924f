#include "core/exchange/calendar.h"

#include <algorithm>
#include <string_view>

namespace rehale::exchange {

namespace {

constexpr std::size_t k_line_bytes = 75;  // RFC 5545 section 3.1, without the line end
constexpr int k_alarm_hour = 9;           // a friendly hour; common practice

bool is_day(Day day) { return day >= k_first_day && day <= k_last_day; }

bool is_uid(std::string_view uid) {
  return !uid.empty() && uid.size() <= 200 && std::ranges::all_of(uid, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || c == '.' || c == '@';
  });
}

// Folded so that no line is over 75 bytes and no UTF-8 letter is cut.
void add_line(std::string& text, std::string_view line) {
  std::size_t room = k_line_bytes;
  while (line.size() > room) {
    std::size_t cut = room;
    while (cut > 1 && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) --cut;
    text.append(line.substr(0, cut)).append("\r\n ");
    line.remove_prefix(cut);
    room = k_line_bytes - 1;  // the space that marks the rest counts
  }
  text.append(line).append("\r\n");
}

// Section 3.3.11: backslash, semicolon, comma and line ends; other control characters have no
// place.
std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t n = 0; n < text.size(); ++n) {
    const char c = text[n];
    if (c == '\\' || c == ';' || c == ',') out.append({'\\', c});
    else if (c == '\n') out += "\\n";
    else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) out += c;
    else if (c == '\t') out += ' ';
  }
  return out;
}

// "20261125"
std::string basic_date(Day day) {
  std::string date = iso_date(day);
  std::erase(date, '-');
  return date;
}

std::string basic_time(int second) {
  std::string time = "000000";
  const int parts[] = {second / 3600, second / 60 % 60, second % 60};
  for (std::size_t n = 0; n < 3; ++n) {
    time[2 * n] = static_cast<char>('0' + parts[n] / 10);
    time[2 * n + 1] = static_cast<char>('0' + parts[n] % 10);
  }
  return time;
}

Result<void> check(const Reminder& reminder, std::size_t index) {
  const auto trouble = [index](const char* field, const char* wanted) {
    return fail("calendar-input", "reminder " + std::to_string(index) + ", " + field, wanted);
  };
  if (!is_uid(reminder.uid)) return trouble("uid", "expected letters, digits and - _ . @");
  if (!is_day(reminder.on)) return trouble("on", "expected a day from 1970 on");
  if (reminder.title.empty()) return trouble("title", "expected a sentence");
  if (reminder.every_days < 0 || reminder.every_days > 400) {
    return trouble("every_days", "0 to 400 days");
  }
  if (reminder.every_days > 0 && (reminder.times < 1 || reminder.times > 400)) {
    return trouble("times", "1 to 400 times");
  }
  return {};
}

void add_event(std::string& text, const Reminder& reminder, const std::string& stamp) {
  const std::string title = escaped(reminder.title);
  add_line(text, "BEGIN:VEVENT");
  add_line(text, "UID:" + reminder.uid);
  add_line(text, "DTSTAMP:" + stamp);
  add_line(text, "DTSTART;VALUE=DATE:" + basic_date(reminder.on));
  if (reminder.every_days > 0) {
    add_line(text, "RRULE:FREQ=DAILY;INTERVAL=" + std::to_string(reminder.every_days) +
                       ";COUNT=" + std::to_string(reminder.times));
  }
  add_line(text, "SUMMARY:" + title);
  if (!reminder.note.empty()) add_line(text, "DESCRIPTION:" + escaped(reminder.note));
  add_line(text, "TRANSP:TRANSPARENT");
  add_line(text, "BEGIN:VALARM");
  add_line(text, "ACTION:DISPLAY");
  add_line(text, "DESCRIPTION:" + title);
  add_line(text, "TRIGGER:PT" + std::to_string(k_alarm_hour) + "H");
  add_line(text, "END:VALARM");
  add_line(text, "END:VEVENT");
}

}  // namespace

Result<std::string> write_calendar(std::span<const Reminder> reminders, const Moment& made) {
  if (!is_day(made.day) || made.second < 0 || made.second >= 86400) {
    return fail("calendar-input", "made", "expected a day from 1970 on and a second of it");
  }
  std::string text;
  add_line(text, "BEGIN:VCALENDAR");
  add_line(text, "VERSION:2.0");
  add_line(text, "PRODID:-//rehale//reminders//EN");
  add_line(text, "CALSCALE:GREGORIAN");
  const std::string stamp = basic_date(made.day) + "T" + basic_time(made.second) + "Z";
  for (std::size_t n = 0; n < reminders.size(); ++n) {
    const auto checked = check(reminders[n], n);
    if (!checked) return tl::unexpected(checked.error());
    add_event(text, reminders[n], stamp);
  }
  add_line(text, "END:VCALENDAR");
  return text;
}

}  // namespace rehale::exchange
