#include "tests/support/fixture.h"

#include <cstdio>
#include <cstdlib>

#include "core/procedure/check_family.h"
#include "tests/support/files.h"

namespace rehale::support {
namespace {

template <class T>
T take(catalog::Loaded<T> loaded) {
  for (const auto& finding : loaded.findings)
    std::fprintf(stderr, "%s#%s: %s: %s\n", finding.file.c_str(), finding.pointer.c_str(),
                 finding.rule.c_str(), finding.remedy.c_str());
  if (!loaded.value) std::abort();
  return *std::move(loaded.value);
}

}  // namespace

std::string source_path(const std::string& relative) {
  return std::string(REHALE_SOURCE_DIR) + '/' + relative;
}

catalog::ContentFile exact(std::string path, const std::string& bytes) {
  catalog::ContentFile file{std::move(path), {}};
  file.bytes.assign(bytes.data(), bytes.size());
  file.bytes.shrink_to_fit();
  return file;
}

catalog::ContentFile ok_file(const std::string& name) {
  const auto bytes = read_file(source_path("tests/fixtures/family-ok/" + name));
  if (!bytes) std::abort();
  return exact(name, *bytes);
}

catalog::Library ok_library() { return take(catalog::load_library(ok_file("library.json"))); }

catalog::FamilyFiles ok_files() {
  return {ok_file("procedure.json"),
          ok_file("questions.json"),
          {{"en", ok_file("text.en.json")}},
          ok_file("poses.json")};
}

catalog::Family ok_family() {
  return take(catalog::load_family(ok_library(), "bubble-pipe", ok_files(), procedure::check_family_runs));
}

}  // namespace rehale::support
