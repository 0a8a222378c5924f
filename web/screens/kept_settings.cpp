#include "web/screens/kept_settings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace rehale::screens {

namespace {

constexpr std::string_view k_version = "1";
constexpr std::array<std::string_view, 3> k_grounds = {"system", "light", "dark"};
constexpr std::array<std::string_view, 3> k_wishes = {"system", "yes", "no"};
constexpr std::array<std::string_view, 3> k_loudnesses = {"loud", "medium", "quiet"};

template <class Value>
std::string_view word_of(const std::array<std::string_view, 3>& words, Value value) {
  return words[static_cast<std::size_t>(value)];
}

template <class Value>
void read_word(const std::array<std::string_view, 3>& words, std::string_view word, Value& value) {
  const auto found = std::find(words.begin(), words.end(), word);
  if (found != words.end()) value = static_cast<Value>(found - words.begin());
}

// "100" to "200", as percent; anything else leaves the size to the system.
void read_scale(std::string_view word, float& scale) {
  if (word.size() != 3) return;
  int percent = 0;
  for (const char c : word) {
    if (c < '0' || c > '9') return;
    percent = percent * 10 + (c - '0');
  }
  if (percent >= 100 && percent <= 200) scale = static_cast<float>(percent) / 100;
}

bool is_language(std::string_view word) {
  return word.size() >= 2 && word.size() <= 8 &&
         std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

void read_part(std::string_view key, std::string_view word, KeptSettings& settings) {
  kit::Look& look = settings.look;
  if (key == "ground") read_word(k_grounds, word, look.ground);
  if (key == "contrast") read_word(k_wishes, word, look.more_contrast);
  if (key == "still") read_word(k_wishes, word, look.still);
  if (key == "text") read_scale(word, look.text_scale);
  if (key == "hand") look.left_hand = word == "left";
  if (key == "slowly") look.read_slowly = word == "yes";
  if (key == "volume") read_word(k_loudnesses, word, look.loudness);
  if (key == "language" && is_language(word)) settings.language = word;
}

void write_part(std::string& text, std::string_view key, std::string_view word) {
  text.append(" ").append(key).append("=").append(word);
}

}  // namespace

std::string write_settings(const KeptSettings& settings) {
  const kit::Look& look = settings.look;
  std::string text(k_version);
  if (look.ground != kit::Look::Ground::system)
    write_part(text, "ground", word_of(k_grounds, look.ground));
  if (look.more_contrast != kit::Wish::system)
    write_part(text, "contrast", word_of(k_wishes, look.more_contrast));
  if (look.still != kit::Wish::system) write_part(text, "still", word_of(k_wishes, look.still));
  if (look.text_scale > 0)
    write_part(text, "text", std::to_string(std::lround(look.text_scale * 100)));
  if (look.left_hand) write_part(text, "hand", "left");
  if (look.read_slowly) write_part(text, "slowly", "yes");
  if (look.loudness != kit::Look::Loudness::loud)
    write_part(text, "volume", word_of(k_loudnesses, look.loudness));
  if (!settings.language.empty()) write_part(text, "language", settings.language);
  return text;
}

std::optional<KeptSettings> read_settings(std::string_view text) {
  const auto next_word = [&text] {
    const std::string_view word = text.substr(0, text.find(' '));
    text.remove_prefix(std::min(text.size(), word.size() + 1));
    return word;
  };
  if (next_word() != k_version) return std::nullopt;
  KeptSettings settings;
  while (!text.empty()) {
    const std::string_view part = next_word();
    const auto equals = part.find('=');
    if (equals != part.npos) read_part(part.substr(0, equals), part.substr(equals + 1), settings);
  }
  return settings;
}

}  // namespace rehale::screens
