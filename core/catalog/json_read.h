// JSON text -> values with places, and a cursor that reads them and notes what is not as it should be.
// The only door to the JSON library; must not know what any content means.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

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
  void add(const std::string& file, std::string pointer, std::string rule, std::string remedy);
  // From now on, findings at a place that has one already are left out.
  void form_is_read() { form_findings_ = findings_.size(); }
  [[nodiscard]] std::vector<Finding>& findings() { return findings_; }

 private:
  std::vector<Finding> findings_;
  std::size_t form_findings_ = 0;
};

// nullopt after a finding: "too-large", "too-deep", "too-many-values", "broken-json" (remedy says line
// and column; also text that is not UTF-8). "duplicate-key" is found too but the value still comes.
// A byte order mark and CRLF are fine.
[[nodiscard]] std::optional<Json> parse_json(const ContentFile& file, Report& report);

// "a/b~c" -> "a~1b~0c" (RFC 6901).
[[nodiscard]] std::string pointer_token(std::string_view key);

// Lower-case words or numbers joined by '-'.
[[nodiscard]] bool is_id(std::string_view text);

// A place in a file. Reading a member that is missing or of the wrong type notes a finding ("missing-key",
// "wrong-type", "bad-id", "empty-text") and gives an empty value, so that reading goes on. `_or` forms
// take a missing member without complaint.
class Reader {
 public:
  Reader(const Json* value, const std::string& file, std::string pointer, Report& report)
      : value_(value), file_(&file), pointer_(std::move(pointer)), report_(&report) {}

  // The member, or a place that holds nothing.
  [[nodiscard]] Reader at(std::string_view key) const;
  [[nodiscard]] Reader at(std::size_t index) const;
  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] const Json* value() const { return value_; }
  [[nodiscard]] const std::string& pointer() const { return pointer_; }

  [[nodiscard]] std::string text(std::string_view key) const;  // not empty
  [[nodiscard]] Id id(std::string_view key) const;
  [[nodiscard]] Id id_or_none(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key) const;  // 0 when absent
  [[nodiscard]] double number_or(std::string_view key, double otherwise) const;
  [[nodiscard]] int whole(std::string_view key) const;  // "wrong-type" unless a whole number
  [[nodiscard]] bool flag_or_no(std::string_view key) const;
  [[nodiscard]] std::vector<Id> ids(std::string_view key) const;
  [[nodiscard]] std::vector<Id> ids_or_none(std::string_view key) const;

  // The places of a list, in order; none when it is missing or no list.
  [[nodiscard]] std::vector<Reader> list(std::string_view key) const;
  [[nodiscard]] std::vector<Reader> list_or_none(std::string_view key) const;

  // Must be an object with no other members: else "wrong-type", "unknown-key".
  void allow_only(std::initializer_list<std::string_view> keys) const;

  void finding(std::string rule, std::string remedy) const;
  bool expect(Json::Type type) const;  // "missing-key" or "wrong-type" and false

 private:
  const Json* value_;
  const std::string* file_;
  std::string pointer_;
  Report* report_;
};

}  // namespace rehale::catalog
