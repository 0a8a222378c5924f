// rehale_validate ASSETS_DIR: every finding as "file#pointer: rule: remedy" and exit 1, or one line
// a family and exit 0.
#include <cstdio>

#include "core/catalog/care.h"
#include "core/procedure/check_family.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;

int print(const std::vector<catalog::Finding>& findings) {
  std::fputs(support::said(findings).c_str(), stdout);
  return static_cast<int>(findings.size());
}

int check_care(const std::string& folder, const catalog::Library& library, const catalog::Id& id) {
  std::vector<catalog::Finding> missing;
  const auto file = support::read_content(folder, "families/" + id + "/care.json", missing);
  return print(missing.empty() ? catalog::load_care(library, id, file).findings : missing);
}

// Files that are there are checked even when others are missing.
int check_family(const std::string& folder, const catalog::Library& library,
                 const catalog::Id& id) {
  std::vector<catalog::Finding> missing;
  auto files = support::read_family(folder, library, id, missing);
  std::erase_if(files.texts, [](const auto& texts) { return texts.file.bytes.empty(); });
  auto loaded = catalog::load_family(library, id, files, procedure::check_family_runs);
  for (const auto& gone : missing)
    std::erase_if(loaded.findings, [&](const auto& finding) { return finding.file == gone.file; });
  int findings = print(missing) + print(loaded.findings);
  findings += check_care(folder, library, id);
  if (findings == 0) {
    std::printf(
        "%s: %zu actions, %zu rules, %zu criteria, %zu techniques, %zu misconceptions, "
        "%zu questions%s\n",
        id.c_str(), loaded.value->actions.size(), loaded.value->rules.size(),
        loaded.value->criteria.size(), loaded.value->techniques.size(),
        loaded.value->misconceptions.size(), loaded.value->questions.size(),
        files.poses ? "" : " (no poses.json: pose names not checked)");
  }
  return findings;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 2) {
    std::fprintf(stderr, "usage: rehale_validate ASSETS_DIR\n");
    return 2;
  }
  const std::string folder = std::string(arguments[1]) + '/';
  std::vector<catalog::Finding> missing;
  const auto file = support::read_content(folder, "library.json", missing);
  if (!missing.empty()) return print(missing), 1;
  const auto library = catalog::load_library(file);
  int findings = print(library.findings);
  if (!library.value) return 1;
  for (const auto& language : library.value->languages) {
    missing.clear();
    const auto texts = support::read_content(folder, "text/" + language + ".json", missing);
    findings += print(missing.empty() ? catalog::load_library_texts(*library.value, texts).findings
                                      : missing);
  }
  for (const auto& id : library.value->families)
    findings += check_family(folder, *library.value, id);
  return findings == 0 ? 0 : 1;
}
