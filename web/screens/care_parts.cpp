#include "web/screens/care_parts.h"

namespace rehale::screens {

bool is_sprayed(const catalog::Care& numbers) { return numbers.find("prime_new") != nullptr; }

bool has_can(const catalog::Care& numbers) {
  const auto* prime = numbers.find("prime_new");
  return prime != nullptr && prime->unit == "sprays";
}

const char* counts_in(const catalog::Care& numbers) {
  return is_sprayed(numbers) ? "puffs" : "doses";
}

double most_on_counter(const catalog::Care& numbers) {
  return numbers.find("doses")->pass_high.value_or(exchange::k_most_left);
}

std::string unit_words(const App& app, int count, const std::string& unit) {
  const std::string group = unit == "months" || unit == "inhalers" ? "care/" : "units/";
  return app.say(group + unit + (count == 1 ? "/one" : "/many"));
}

std::string counted(const App& app, int count, const std::string& unit) {
  return std::to_string(count) + ' ' + unit_words(app, count, unit);
}

}  // namespace rehale::screens
