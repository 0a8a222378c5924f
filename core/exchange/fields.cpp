#include "core/exchange/fields.h"

#include <algorithm>

namespace rehale::exchange {

bool is_name(std::string_view text) {
  return std::ranges::all_of(text, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || c == '.';
  });
}

bool is_whole(const Json& json) {
  if (json.is_number_unsigned()) return json.get<std::uint64_t>() <= (std::uint64_t{1} << 53U);
  return json.is_number_integer() && json.get<std::int64_t>() >= -(std::int64_t{1} << 53U) &&
         json.get<std::int64_t>() <= (std::int64_t{1} << 53U);
}

const Json* Fields::take() {
  if (trouble_ || at_ >= list_.size()) return nullptr;
  return &list_[at_++];
}

void Fields::refuse(const char* what, const char* wanted) {
  if (!trouble_) {
    trouble_ = Error{"code-shape", std::string(what) + " (field " + std::to_string(at_) + ")",
                     std::string("expected ") + wanted};
  }
}

bool Fields::next_is_text() const {
  return !trouble_ && at_ < list_.size() && list_[at_].is_string();
}

std::string Fields::name(const char* what, std::size_t most, bool may_be_empty) {
  const Json* json = take();
  if (json == nullptr) return {};
  if (json->is_string()) {
    const auto& text = json->get_ref<const std::string&>();
    if (text.size() <= most && (may_be_empty || !text.empty()) && is_name(text)) return text;
  }
  refuse(what, "a short name of letters and digits");
  return {};
}

double Fields::whole(const char* what, double least, double most) {
  const Json* json = take();
  if (json == nullptr) return least;
  if (is_whole(*json)) {
    const double value = json->get<double>();
    if (value >= least && value <= most) return value;
  }
  refuse(what, "a whole number of sensible size");
  return least;
}

std::uint64_t Fields::word(const char* what) {
  const Json* json = take();
  if (json == nullptr) return 0;
  if (json->is_number_unsigned()) return json->get<std::uint64_t>();
  refuse(what, "a whole number from 0 on");
  return 0;
}

Bytes Fields::bytes(const char* what, std::size_t least, std::size_t most) {
  const Json* json = take();
  if (json == nullptr) return {};
  if (json->is_binary() && json->get_binary().size() >= least &&
      json->get_binary().size() <= most) {
    return json->get_binary();
  }
  refuse(what, "bytes of the length that belongs here");
  return {};
}

bool Fields::skip_null() {
  if (trouble_ || at_ >= list_.size() || !list_[at_].is_null()) return false;
  ++at_;
  return true;
}

const Json* Fields::list(const char* what, std::size_t most) {
  const Json* json = take();
  if (json == nullptr) return nullptr;
  if (json->is_array() && json->size() <= most) return json;
  refuse(what, "a list of sensible length");
  return nullptr;
}

Result<void> Fields::done() const {
  if (trouble_) return tl::unexpected(*trouble_);
  return {};
}

}  // namespace rehale::exchange
