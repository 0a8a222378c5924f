// A cursor over the list that a code holds: each field of the kind and size that is expected, or an
// error with its place. Internal to core/exchange.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "core/exchange/cbor.h"

namespace rehale::exchange {

class Fields {
 public:
  // `list` must outlive this. Fewer or more than `count` fields is an error at done().
  Fields(const Json& list, std::size_t count) : list_(list) {
    if (!list.is_array() || list.size() != count) {
      trouble_ = Error{"code-shape", "", "expected a list of " + std::to_string(count) + " fields"};
    }
  }

  // Each takes the next field; after the first trouble all give nothing.
  // Lower-case letters, digits, '-', '_', '.', at most `most`.
  std::string name(const char* what, std::size_t most, bool may_be_empty = false);
  double whole(const char* what, double least, double most);
  std::uint64_t word(const char* what);  // 64 bits
  Bytes bytes(const char* what, std::size_t least, std::size_t most);
  bool skip_null();  // true, and past it, when the next field is null
  const Json* list(const char* what, std::size_t most);

  [[nodiscard]] Result<void> done() const;
  void refuse(const char* what, const char* wanted);
  [[nodiscard]] bool next_is_text() const;

 private:
  const Json* take();

  const Json& list_;
  std::size_t at_ = 0;
  std::optional<Error> trouble_;
};

[[nodiscard]] bool is_name(std::string_view text);
// At most 2^53 either way, so that it stands in a double exactly.
[[nodiscard]] bool is_whole(const Json& json);

}  // namespace rehale::exchange
