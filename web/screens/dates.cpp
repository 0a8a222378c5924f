#include "web/screens/dates.h"

#include "web/kit/words.h"

namespace rehale::screens {

std::string day_in_words(const catalog::Texts& texts, Day day) {
  const Civil date = civil_of(day);
  const std::string* pattern = texts.find("asked/date");
  const std::string* month = texts.find("asked/months/" + std::to_string(date.month));
  if (pattern == nullptr || month == nullptr) return iso_date(day);
  return kit::fill(
      *pattern,
      {{"day", std::to_string(date.day)}, {"month", *month}, {"year", std::to_string(date.year)}});
}

}  // namespace rehale::screens
