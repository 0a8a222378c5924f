#include "core/catalog/json_read.h"

#define JSON_NO_IO
#include <algorithm>
#include <nlohmann/json.hpp>

namespace rehale::catalog {
namespace {

struct Place {
  std::size_t line = 1, column = 1;
};

Place place_of(const std::string& bytes, std::size_t position) {
  const std::string_view read(bytes.data(), std::min(position, bytes.size()));
  const auto line_start = read.rfind('\n') + 1;  // npos + 1 = 0: the first line
  return {1 + static_cast<std::size_t>(std::count(read.begin(), read.end(), '\n')),
          std::max<std::size_t>(1, read.size() - line_start)};
}

// The library's reason without its own place and without raw bytes of the file.
std::string plain_reason(std::string_view what) {
  if (const auto column = what.find(", column "); column != what.npos)
    what.remove_prefix(std::min(what.size(), what.find(": ", column) + 2));
  what = what.substr(0, std::min(what.find("; last read"), std::size_t{160}));
  std::string plain(what);
  for (char& c : plain)
    if (c < ' ' || c > '~') c = '?';
  return plain;
}

// Builds Json from parse events. false stops the parser: after that the value is not used.
class Builder {
 public:
  Builder(const ContentFile& file, Report& report) : file_(file), report_(report) {}

  bool null() { return put(Json::Type::null) != nullptr; }
  bool boolean(bool flag) {
    Json* value = put(Json::Type::boolean);
    if (value != nullptr) value->flag = flag;
    return value != nullptr;
  }
  bool number_integer(std::int64_t n) { return number_float(static_cast<double>(n), {}); }
  bool number_unsigned(std::uint64_t n) { return number_float(static_cast<double>(n), {}); }
  bool number_float(double n, const std::string& /*as_written*/) {
    Json* value = put(Json::Type::number);
    if (value != nullptr) value->number = n;
    return value != nullptr;
  }
  bool string(std::string& text) {
    Json* value = put(Json::Type::text);
    if (value != nullptr) value->text = std::move(text);
    return value != nullptr;
  }
  bool binary(nlohmann::json::binary_t& /*bytes*/) { return false; }  // not in JSON text
  bool start_object(std::size_t /*size*/) { return open(Json::Type::object); }
  bool start_array(std::size_t /*size*/) { return open(Json::Type::list); }
  bool key(std::string& name) {
    open_.back()->keys.push_back(std::move(name));
    return true;
  }
  bool end_object() {
    find_duplicates();
    open_.pop_back();
    return true;
  }
  bool end_array() {
    open_.pop_back();
    return true;
  }
  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::json::exception& error) {
    const auto at = place_of(file_.bytes, position);
    report_.add(file_.path, "", "broken-json",
                {"line ", std::to_string(at.line), ", column ", std::to_string(at.column), ": ",
                 plain_reason(error.what())});
    return false;
  }

  Json root;

 private:
  // The new value in its place, or nullptr after a finding.
  Json* put(Json::Type type) {
    if (++values_ > k_max_json_values) {
      report_.add(file_.path, pointer(true), "too-many-values",
                  {"at most ", std::to_string(k_max_json_values), " values in a file"});
      return nullptr;
    }
    Json* value = open_.empty() ? &root : &open_.back()->items.emplace_back();
    value->type = type;
    return value;
  }

  bool open(Json::Type type) {
    if (open_.size() >= static_cast<std::size_t>(k_max_json_depth)) {
      report_.add(
          file_.path, pointer(true), "too-deep",
          {"at most ", std::to_string(k_max_json_depth), " lists and objects in each other"});
      return false;
    }
    Json* value = put(type);
    if (value != nullptr)
      open_.push_back(value);  // stays put: its list grows again once it is closed
    return value != nullptr;
  }

  // Of the innermost list or object, or of the value that comes next in it.
  [[nodiscard]] std::string pointer(bool of_next) const {
    std::string path;
    for (const Json* level : open_) {
      const bool innermost = level == open_.back();
      if (innermost && !of_next) break;
      const bool object = level->type == Json::Type::object;
      const auto index = level->items.size() - (innermost ? 0 : 1);
      path += '/' + (object ? pointer_token(level->keys.back()) : std::to_string(index));
    }
    return path;
  }

  void find_duplicates() {
    auto names = open_.back()->keys;
    std::sort(names.begin(), names.end());
    for (std::size_t i = 1; i < names.size(); ++i) {
      if (names[i] != names[i - 1] || (i > 1 && names[i] == names[i - 2])) continue;
      report_.add(file_.path, pointer(false) + '/' + pointer_token(names[i]), "duplicate-key",
                  {"this name stands more than once in one object; keep one"});
    }
  }

  const ContentFile& file_;
  Report& report_;
  std::vector<Json*> open_;  // from the root to the innermost list or object not yet closed
  std::size_t values_ = 0;
};

}  // namespace

const Json* Json::find(std::string_view key) const {
  const auto found = std::find(keys.begin(), keys.end(), key);
  const auto index = static_cast<std::size_t>(found - keys.begin());
  return index < items.size() && found != keys.end() ? &items[index] : nullptr;
}

bool Report::bad_form(const std::string& file, std::string_view pointer) const {
  const auto end = findings_.begin() + static_cast<std::ptrdiff_t>(form_findings_);
  return std::any_of(findings_.begin(), end, [&](const Finding& finding) {
    return finding.pointer == pointer && finding.file == file;
  });
}

bool Report::all_resolves() const {
  return form_findings_ == 0 &&
         std::none_of(findings_.begin(), findings_.end(),
                      [](const Finding& finding) { return finding.rule.starts_with("unknown-"); });
}

void Report::add(const std::string& file, std::string_view pointer, std::string_view rule,
                 Words remedy) {
  if (bad_form(file, pointer)) return;
  findings_.push_back({file, std::string(pointer), std::string(rule), joined(remedy)});
}

std::optional<Json> parse_json(const ContentFile& file, Report& report) {
  if (file.bytes.size() > k_max_json_bytes) {
    report.add(
        file.path, "", "too-large",
        {std::to_string(file.bytes.size()), " bytes; at most ", std::to_string(k_max_json_bytes)});
    return std::nullopt;
  }
  // The library takes a zero byte for the end of the text.
  if (const auto zero = file.bytes.find('\0'); zero != std::string::npos) {
    const auto at = place_of(file.bytes, zero + 1);
    report.add(file.path, "", "broken-json",
               {"line ", std::to_string(at.line), ", column ", std::to_string(at.column),
                ": a zero byte"});
    return std::nullopt;
  }
  Builder builder(file, report);
  if (!nlohmann::json::sax_parse(file.bytes, &builder)) return std::nullopt;
  return std::move(builder.root);
}

std::string pointer_token(std::string_view key) {
  std::string token;
  for (const char c : key) {
    if (c == '~') token += "~0";
    else if (c == '/') token += "~1";
    else token += c;
  }
  return token;
}

}  // namespace rehale::catalog
