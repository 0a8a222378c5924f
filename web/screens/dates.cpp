#include "web/screens/dates.h"

#include "web/kit/words.h"

namespace rehale::screens {

std::string month_words(const catalog::Texts& texts, int month) {
  const std::string* name = texts.find("dates/months/" + std::to_string(month));
  return name == nullptr ? std::string() : *name;
}

std::string date_words(const catalog::Texts& texts, Day day) {
  if (day < k_first_day || day > k_last_day) return {};
  const Civil date = civil_of(day);
  const std::string* pattern = texts.find("dates/day");
  if (pattern == nullptr) return {};
  return kit::fill(*pattern, {{"day", std::to_string(date.day)},
                              {"month", month_words(texts, date.month)},
                              {"year", std::to_string(date.year)}});
}

}  // namespace rehale::screens
