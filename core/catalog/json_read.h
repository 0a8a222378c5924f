// JSON text -> values, with bounds on size and depth, and findings instead of exceptions.
// The only door to the JSON library for reading; must not know what any content means.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalog/joined.h"
#include "core/catalog/model.h"

namespace rehale::catalog {

inline constexpr std::size_t k_max_json_bytes = 2'000'000;
inline constexpr std::size_t k_max_json_values = 60'000;
inline constexpr int k_max_json_depth = 32;

// A parsed value. Members of an object keep the order of the file.
struct Json {
  enum class Type : unsigned char { null, boolean, number, text, list, object };
  Type type = Type::null;
  bool flag = false;              // boolean
  double number = 0;              // number
  std::string text;               // text
  std::vector<std::string> keys;  // object: one a member, keys[i] names items[i]
  std::vector<Json> items;        // list, object

  // nullptr when this is no object or has no such member.
  [[nodiscard]] const Json* find(std::string_view key) const;
};

// Collects findings of one load. A place whose form was found bad is not reported a second time for
// what it means.
class Report {
 public:
  void add(const std::string& file, std::string_view pointer, std::string_view rule, Words remedy);
  // From now on, findings at a place that has one already are left out.
  void form_is_read() { form_findings_ = findings_.size(); }
  [[nodiscard]] bool bad_form(const std::string& file, std::string_view pointer) const;
  // Form is good and no finding is about an unknown name.
  [[nodiscard]] bool all_resolves() const;
  [[nodiscard]] std::vector<Finding>& findings() { return findings_; }

 private:
  std::vector<Finding> findings_;
  std::size_t form_findings_ = 0;
};

// nullopt after a finding: "too-large", "too-deep", "too-many-values", "broken-json" (remedy says
// line and column; also text that is not UTF-8). "duplicate-key" is found too but the value still
// comes. A byte order mark and CRLF are fine.
[[nodiscard]] std::optional<Json> parse_json(const ContentFile& file, Report& report);

// "a/b~c" -> "a~1b~0c" (RFC 6901).
[[nodiscard]] std::string pointer_token(std::string_view key);

}  // namespace rehale::catalog
