#include "core/catalog/reader.h"

#include <algorithm>
#include <cmath>

namespace rehale::catalog {
namespace {

const char* name_of(Json::Type type) {
  switch (type) {
    case Json::Type::null:
      return "null";
    case Json::Type::boolean:
      return "true or false";
    case Json::Type::number:
      return "a number";
    case Json::Type::text:
      return "a text";
    case Json::Type::list:
      return "a list";
    case Json::Type::object:
      return "an object";
  }
  return "";
}

}  // namespace

bool is_id(std::string_view text) {
  char last = '-';
  for (const char c : text) {
    const bool word = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!word && (c != '-' || last == '-')) return false;
    last = c;
  }
  return last != '-';
}

Reader Reader::at(std::string_view key) const {
  return {value_ != nullptr ? value_->find(key) : nullptr, *file_,
          pointer_ + '/' + pointer_token(key), *report_};
}

bool Reader::has(std::string_view key) const {
  return value_ != nullptr && value_->find(key) != nullptr;
}

void Reader::finding(std::string_view rule, Words remedy) const {
  report_->add(*file_, pointer_, rule, remedy);
}

const Json* Reader::expect(Json::Type type) const {
  if (value_ == nullptr) {
    finding("missing-key", {"is not there; put ", name_of(type)});
    return nullptr;
  }
  if (value_->type != type) {
    finding("wrong-type", {"is ", name_of(value_->type), "; put ", name_of(type)});
    return nullptr;
  }
  return value_;
}

std::string Reader::text(std::string_view key) const {
  const auto place = at(key);
  const auto* found = place.expect(Json::Type::text);
  if (found == nullptr) return {};
  if (found->text.find_first_not_of(" \t\r\n") == std::string::npos)
    place.finding("empty-text", {"is empty; put words"});
  return found->text;
}

Id Reader::as_id() const {
  const auto* found = expect(Json::Type::text);
  if (found == nullptr) return {};
  if (!is_id(found->text))
    finding("bad-id", {"\"", found->text, "\": use lower-case words joined by '-'"});
  return found->text;
}

Id Reader::id(std::string_view key) const { return at(key).as_id(); }

Id Reader::id_or_none(std::string_view key) const { return has(key) ? id(key) : Id{}; }

double Reader::number(std::string_view key) const {
  const auto* found = at(key).expect(Json::Type::number);
  return found != nullptr ? found->number : 0;
}

double Reader::number_or(std::string_view key, double otherwise) const {
  return has(key) ? number(key) : otherwise;
}

std::optional<double> Reader::number_or_null(std::string_view key) const {
  const auto place = at(key);
  if (place.value_ != nullptr && place.value_->type == Json::Type::null) return std::nullopt;
  return number(key);
}

std::pair<std::optional<double>, std::optional<double>> Reader::span_or_none(
    std::string_view key) const {
  const auto places = list_or_none(key);
  std::pair<std::optional<double>, std::optional<double>> span;
  if (!has(key) || at(key).value_->type != Json::Type::list) return span;
  if (places.size() != 2) {
    at(key).finding("wrong-type", {"put two: [lowest, highest], null for an open end"});
    return span;
  }
  const auto end = [](const Reader& place) -> std::optional<double> {
    if (place.value_->type == Json::Type::null) return std::nullopt;
    const auto* found = place.expect(Json::Type::number);
    return found != nullptr ? std::optional<double>(found->number) : std::nullopt;
  };
  return {end(places[0]), end(places[1])};
}

int Reader::whole(std::string_view key) const {
  const double n = number(key);
  if (n == std::floor(n) && std::abs(n) <= 1e9) return static_cast<int>(n);
  at(key).finding("wrong-type", {"put a whole number"});
  return 0;
}

bool Reader::flag_or_no(std::string_view key) const {
  if (!has(key)) return false;
  const auto* found = at(key).expect(Json::Type::boolean);
  return found != nullptr && found->flag;
}

std::vector<Id> Reader::ids(std::string_view key) const {
  std::vector<Id> all;
  for (const auto& place : list(key)) all.push_back(place.as_id());
  return all;
}

std::vector<Id> Reader::ids_or_none(std::string_view key) const {
  return has(key) ? ids(key) : std::vector<Id>{};
}

std::vector<Reader> Reader::list(std::string_view key) const {
  std::vector<Reader> places;
  const auto place = at(key);
  if (const auto* found = place.expect(Json::Type::list)) {
    for (const auto& item : found->items) {
      places.emplace_back(&item, *file_, place.pointer_ + '/' + std::to_string(places.size()),
                          *report_);
    }
  }
  return places;
}

std::vector<Reader> Reader::list_or_none(std::string_view key) const {
  return has(key) ? list(key) : std::vector<Reader>{};
}

void Reader::allow_only(std::initializer_list<std::string_view> keys) const {
  const auto* found = expect(Json::Type::object);
  if (found == nullptr) return;
  std::string known;
  for (const auto key : keys) known += (known.empty() ? "" : ", ") + std::string(key);
  for (const auto& key : found->keys) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end())
      at(key).finding("unknown-key", {"no such member here; there are: ", known});
  }
}

}  // namespace rehale::catalog
