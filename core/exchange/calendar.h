// Reminders as a calendar file (iCalendar, RFC 5545): all-day events with one alarm in the morning.
// Must not know what they remind of, clocks or chance: sentences, moment and ids come in.
#pragma once

#include <span>
#include <string>

#include "core/base/civil.h"
#include "core/base/result.h"

namespace rehale::exchange {

struct Reminder {
  std::string uid;  // the same reminder keeps it when it moves; letters, digits, '-', '_', '.', '@'
  Day on = 0;
  std::string title, note;  // any text; note may be empty
  int every_days = 0;       // 0: once
  int times = 0;            // of a repeated one, 1-400
};

// When the file was made: day and second of it (UTC), for DTSTAMP.
struct Moment {
  Day day = 0;
  int second = 0;
};

// Errors: "calendar-input", `where` naming the reminder and field.
[[nodiscard]] Result<std::string> write_calendar(std::span<const Reminder> reminders,
                                                 const Moment& made);

}  // namespace rehale::exchange
