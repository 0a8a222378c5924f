#include "core/catalog/validate.h"

namespace rehale::catalog {

void Check::operator()(std::string_view pointer, std::string_view rule, Words remedy) const {
  report.add(file, pointer, rule, remedy);
}

std::string at(std::string_view list, std::size_t index, std::string_view rest) {
  return joined({list, "/", std::to_string(index), rest});
}

bool holds(const std::vector<Id>& ids, const Id& id) { return index_of(ids, id) >= 0; }

void tell_unknown(const Check& check, const Id& id, const std::string& pointer,
                  std::string_view what) {
  check(pointer, joined({"unknown-", what}), {"there is no ", what, " \"", id, "\""});
}

void tell_duplicate(const Check& check, const Id& id, const std::string& pointer) {
  check(pointer, "duplicate-id",
        {"\"", id, "\" stands earlier in this list; give it a name of its own"});
}

}  // namespace rehale::catalog
