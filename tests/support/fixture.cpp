#include "tests/support/fixture.h"

#include <cstdio>
#include <cstdlib>

#include "core/procedure/check_family.h"
#include "tests/support/files.h"

namespace rehale::support {
namespace {

[[noreturn]] void give_up(const std::string& why) {
  std::fprintf(stderr, "%s\n", why.c_str());
  std::abort();
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
  if (!bytes) give_up("no fixture " + name);
  return exact(name, *bytes);
}

catalog::Library ok_library() {
  auto loaded = catalog::load_library(ok_file("library.json"));
  if (!loaded.value) give_up(said(loaded.findings));
  return *std::move(loaded.value);
}

catalog::FamilyFiles ok_files() {
  return {ok_file("procedure.json"),
          ok_file("questions.json"),
          {{"en", ok_file("text.en.json")}},
          ok_file("poses.json")};
}

catalog::Family ok_family() {
  auto loaded = load_bubble_pipe(ok_files());
  if (!loaded.value) give_up(said(loaded.findings));
  return *std::move(loaded.value);
}

catalog::Loaded<catalog::Family> load_bubble_pipe(const catalog::FamilyFiles& files) {
  return catalog::load_family(ok_library(), "bubble-pipe", files, procedure::check_family_runs);
}

void replace_in(catalog::ContentFile& file, const std::string& from, const std::string& to) {
  const auto at = file.bytes.find(from);
  if (at == std::string::npos) give_up(file.path + " has no " + from);
  auto bytes = file.bytes;
  bytes.replace(at, from.size(), to);
  file = exact(file.path, bytes);
}

std::string said(const std::vector<catalog::Finding>& findings) {
  std::string all;
  for (const auto& f : findings)
    all += f.file + '#' + f.pointer + ": " + f.rule + ": " + f.remedy + '\n';
  return all;
}

}  // namespace rehale::support
