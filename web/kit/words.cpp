#include "web/kit/words.h"

namespace rehale::kit {

std::string fill(std::string_view pattern,
                 std::initializer_list<std::pair<std::string_view, std::string_view>> values) {
  std::string out;
  while (!pattern.empty()) {
    const auto open = pattern.find('{');
    const auto close = open == pattern.npos ? pattern.npos : pattern.find('}', open);
    if (close == pattern.npos) break;
    out += pattern.substr(0, open);
    const auto name = pattern.substr(open + 1, close - open - 1);
    auto replacement = pattern.substr(open, close - open + 1);
    for (const auto& [key, value] : values) {
      if (key == name) replacement = value;
    }
    out += replacement;
    pattern.remove_prefix(close + 1);
  }
  return out.append(pattern);
}

std::string decimal_words(const Words& words, std::string number) {
  const auto point = number.find('.');
  if (point != std::string::npos) number.replace(point, 1, words.decimal);
  return number;
}

}  // namespace rehale::kit
