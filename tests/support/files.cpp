#include "tests/support/files.h"

#include <cstdio>

namespace rehale::support {

std::optional<std::string> read_file(const std::string& path) {
  std::FILE* file = std::fopen(path.c_str(), "rb");
  if (file == nullptr) return std::nullopt;
  std::string bytes;
  char part[65536];
  for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, file)) > 0;) bytes.append(part, n);
  const bool whole = std::ferror(file) == 0;
  std::fclose(file);
  return whole ? std::optional(std::move(bytes)) : std::nullopt;
}

catalog::ContentFile read_content(const std::string& folder, const std::string& path,
                                  std::vector<catalog::Finding>& findings) {
  auto bytes = read_file(folder + path);
  if (!bytes) findings.push_back({path, "", "missing-file", "cannot be read"});
  return {path, bytes.value_or("")};
}

catalog::FamilyFiles read_family(const std::string& folder, const catalog::Library& library,
                                 const catalog::Id& family,
                                 std::vector<catalog::Finding>& findings) {
  const std::string base = "families/" + family + '/';
  catalog::FamilyFiles files;
  files.procedure = read_content(folder, base + "procedure.json", findings);
  files.questions = read_content(folder, base + "questions.json", findings);
  for (const auto& language : library.languages) {
    std::string path = base;
    path.append("text.").append(language).append(".json");
    files.texts.push_back({language, read_content(folder, path, findings)});
  }
  if (auto poses = read_file(folder + base + "poses.json")) {
    files.poses = catalog::ContentFile{base + "poses.json", std::move(*poses)};
  }
  return files;
}

}  // namespace rehale::support
