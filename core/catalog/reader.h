// A cursor over parsed JSON that reads typed members and notes what is not as it should be.
// Must not know what any content means.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/catalog/json_read.h"

namespace rehale::catalog {

// Lower-case words or numbers joined by '-'.
[[nodiscard]] bool is_id(std::string_view text);

// A place in a file. Reading a member that is missing or of the wrong type notes a finding
// ("missing-key", "wrong-type", "bad-id", "empty-text") and gives an empty value, so that reading
// goes on. `_or` forms take a missing member without complaint.
class Reader {
 public:
  Reader(const Json* value, const std::string& file, std::string pointer, Report& report)
      : value_(value), file_(&file), pointer_(std::move(pointer)), report_(&report) {}

  // The member, or a place that holds nothing.
  [[nodiscard]] Reader at(std::string_view key) const;
  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] const Json* value() const { return value_; }
  [[nodiscard]] const std::string& pointer() const { return pointer_; }
  [[nodiscard]] const std::string& file() const { return *file_; }

  [[nodiscard]] std::string text(std::string_view key) const;  // not empty
  [[nodiscard]] Id id(std::string_view key) const;
  [[nodiscard]] Id id_or_none(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key) const;  // 0 when absent
  [[nodiscard]] double number_or(std::string_view key, double otherwise) const;
  [[nodiscard]] std::optional<double> number_or_null(std::string_view key) const;  // must be there
  // [low, high] with null for an open end; two nullopts when the member is missing.
  [[nodiscard]] std::pair<std::optional<double>, std::optional<double>> span_or_none(
      std::string_view key) const;
  [[nodiscard]] int whole(std::string_view key) const;  // "wrong-type" unless a whole number
  [[nodiscard]] bool flag_or_no(std::string_view key) const;
  [[nodiscard]] std::vector<Id> ids(std::string_view key) const;
  [[nodiscard]] std::vector<Id> ids_or_none(std::string_view key) const;

  // The places of a list, in order; none when it is missing or no list.
  [[nodiscard]] std::vector<Reader> list(std::string_view key) const;
  [[nodiscard]] std::vector<Reader> list_or_none(std::string_view key) const;

  // Must be an object with no other members: else "wrong-type", "unknown-key".
  void allow_only(std::initializer_list<std::string_view> keys) const;

  void finding(std::string_view rule, Words remedy) const;
  // nullptr after a finding.
  [[nodiscard]] const Json* expect(Json::Type type) const;  // "missing-key" or "wrong-type"

 private:
  [[nodiscard]] Id as_id() const;

  const Json* value_;
  const std::string* file_;
  std::string pointer_;
  Report* report_;
};

}  // namespace rehale::catalog
