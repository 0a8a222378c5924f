// Where the numbers about one inhaler come from, and what is no way to count.
#include <algorithm>
#include <set>

#include "core/supply/supply.h"
#include "web/kit/words.h"
#include "web/screens/care_words.h"

namespace rehale::screens {

namespace {

using catalog::Criterion;

std::string name_of(const App& app, const Criterion& number) {
  std::string id = number.id;
  std::ranges::replace(id, '_', '-');
  if (number.unit == "months") id += "-months";
  return app.say("care/number/" + id);
}

const std::optional<int>* told_of(const App& app, const Criterion& number) {
  for (const LeafletNumber& one : k_leaflet_numbers) {
    if (number.id == one.number) return &(app.care.told.leaflet.*one.told);
  }
  return nullptr;
}

// "Lbl: Product labels…" stands once below; here its key.
std::string source_of(const App& app, const Criterion& number) {
  std::string words;
  for (const auto& key : number.from.sources) words += " [" + key + "]";
  if (number.from.status == "CP") words += ' ' + app.say("care/source/common");
  if (number.from.status == "M") words += ' ' + app.say("care/source/memory");
  if (number.from.status == "D") words += ' ' + app.say("care/source/worked-out");
  return words;
}

std::string whole(double value) { return std::to_string(static_cast<int>(value)); }

std::string line_of(const App& app, const Criterion& number) {
  const std::string name = name_of(app, number);
  const auto* told = told_of(app, number);
  if (told != nullptr && *told) {
    return kit::fill(app.say("care/value"), {{"name", name}, {"value", std::to_string(**told)}}) +
           ' ' + app.say("care/source/told");
  }
  const double low = number.pass_low.value_or(0), high = number.pass_high.value_or(0);
  const std::string value = whole(number.target_high.value_or(0));
  const std::string words =
      low < high
          ? kit::fill(
                app.say("care/range"),
                {{"name", name}, {"value", value}, {"low", whole(low)}, {"high", whole(high)}})
          : kit::fill(app.say("care/value"), {{"name", name}, {"value", value}});
  return words + source_of(app, number);
}

}  // namespace

bool leaflet_differs(const App& app) {
  const catalog::Care& numbers = *app.content.care(app.picked());
  return std::ranges::any_of(k_leaflet_numbers, [&](const LeafletNumber& one) {
    const auto& told = app.care.told.leaflet.*one.told;
    const Criterion* number = numbers.find(one.number);
    if (!told || number == nullptr) return false;
    return number->unit == "months" || *told != number->target_low.value_or(0);
  });
}

std::vector<std::string> source_lines(const App& app) {
  std::vector<std::string> lines;
  std::set<catalog::Id> keys;
  for (const Criterion& number : app.content.care(app.picked())->numbers) {
    lines.push_back(line_of(app, number));
    keys.insert(number.from.sources.begin(), number.from.sources.end());
  }
  const auto& sources = app.content.library().sources;
  for (const auto& key : keys) {
    if (sources.contains(key)) lines.push_back(key + ": " + sources.at(key));
  }
  return lines;
}

std::vector<std::string> refused_lines(const App& app) {
  struct Way {
    supply::Method method;
    const char* words;
  };
  constexpr Way k_ways[] = {{supply::Method::float_it, "care/refused/float"},
                            {supply::Method::weigh_it, "care/refused/weigh"},
                            {supply::Method::shake_it, "care/refused/shake"}};
  std::vector<std::string> lines;
  for (const Way& way : k_ways) {
    if (!supply::allow(way.method)) lines.push_back(app.say(way.words));
  }
  return lines;
}

}  // namespace rehale::screens
