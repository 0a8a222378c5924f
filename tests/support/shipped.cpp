#include "tests/support/shipped.h"

#include <cstdio>
#include <cstdlib>
#include <map>

#include "core/procedure/check_family.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace rehale::support {

template <class T>
T take_loaded(catalog::Loaded<T> loaded, const std::vector<catalog::Finding>& missing = {}) {
  loaded.findings.insert(loaded.findings.end(), missing.begin(), missing.end());
  if (!loaded.findings.empty()) {
    std::fputs(said(loaded.findings).c_str(), stderr);
    std::abort();
  }
  return *std::move(loaded.value);
}

const catalog::Library& shipped_library() {
  static const auto library = [] {
    std::vector<catalog::Finding> missing;
    const auto file = read_content(source_path("assets/"), "library.json", missing);
    return take_loaded(catalog::load_library(file), missing);
  }();
  return library;
}

const catalog::Family& shipped_family(const catalog::Id& id) {
  static std::map<catalog::Id, catalog::Family> families;
  if (const auto found = families.find(id); found != families.end()) return found->second;
  std::vector<catalog::Finding> missing;
  const auto files = read_family(source_path("assets/"), shipped_library(), id, missing);
  auto loaded = catalog::load_family(shipped_library(), id, files, procedure::check_family_runs);
  return families[id] = take_loaded(std::move(loaded), missing);
}

catalog::Care care_of(const catalog::Id& family) {
  std::vector<catalog::Finding> missing;
  const auto file =
      read_content(source_path("assets/"), "families/" + family + "/care.json", missing);
  return take_loaded(catalog::load_care(shipped_library(), family, file), missing);
}

}  // namespace rehale::support
