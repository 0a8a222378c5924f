#include "core/catalog/load.h"

#include <utility>

#include "core/catalog/content_id.h"
#include "core/catalog/read_parts.h"
#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

template <class T>
Loaded<T> loaded(T value, Report& report) {
  Loaded<T> result{std::nullopt, std::move(report.findings())};
  if (result.findings.empty()) result.value = std::move(value);
  return result;
}

// {"a":{"b":"x"}} -> "a/b": "x"; the head of the file ("schema", "family", "language") is left out.
void flatten(const Reader& place, const std::string& path,
             std::map<std::string, std::string>& into) {
  for (const auto& key : place.value()->keys) {
    if (path.empty() && (key == "schema" || key == "family" || key == "language")) continue;
    const auto child = place.at(key);
    if (key.empty() || key.find('/') != std::string::npos)
      child.finding("bad-id", {"no '/' in a name"});
    std::string child_path = path;
    if (!path.empty()) child_path += '/';
    child_path += key;
    if (child.value()->type == Json::Type::object) flatten(child, child_path, into);
    else into[child_path] = place.text(key);
  }
}

Texts read_texts(const Reader& root) {
  std::map<std::string, std::string> sentences;
  if (root.expect(Json::Type::object) != nullptr) flatten(root, "", sentences);
  return Texts(std::move(sentences));
}

// Of sentences below `within` (all when empty): every needed one is there and no other.
void compare_sentences(const Texts& texts, const std::vector<std::string>& needed,
                       std::string_view within, const ContentFile& file, Report& report) {
  for (const auto& path : needed) {
    if (texts.find(path) == nullptr)
      report.add(file.path, '/' + path, "missing-text", {"put this sentence"});
  }
  for (const auto& [path, sentence] : texts.all()) {
    if (path.starts_with(within) && !std::binary_search(needed.begin(), needed.end(), path)) {
      report.add(file.path, '/' + path, "unneeded-text",
                 {"nothing shows this sentence; take it out"});
    }
  }
}

Texts read_family_texts(const Family& family, const Id& language, const ContentFile& file,
                        Report& report) {
  const auto json = parse_json(file, report);
  if (!json) return {};
  const Reader root(&*json, file.path, "", report);
  check_head(root);
  check_named(root, "family", family.id);
  check_named(root, "language", language);
  Texts read = read_texts(root);
  report.form_is_read();
  compare_sentences(read, needed_sentences(family, read), "", file, report);
  return read;
}

void check_poses(const Check& of_procedure, const Check& of_questions, const ContentFile& file) {
  const auto json = parse_json(file, of_procedure.report);
  if (!json) return;
  const Reader root(&*json, file.path, "", of_procedure.report);
  const auto* poses = root.at("poses").expect(Json::Type::object);
  if (poses == nullptr) return;
  validate_action_poses(of_procedure, poses->keys);
  validate_question_poses(of_questions, poses->keys);
}

}  // namespace

Loaded<Library> load_library(const ContentFile& file) {
  Report report;
  Library library;
  if (const auto json = parse_json(file, report)) {
    read_library(Reader(&*json, file.path, "", report), library);
    report.form_is_read();
    const Family none;
    validate_library({library, none, file.path, report});
  }
  return loaded(std::move(library), report);
}

Loaded<Texts> load_texts(const ContentFile& file) {
  Report report;
  Texts texts;
  if (const auto json = parse_json(file, report))
    texts = read_texts({&*json, file.path, "", report});
  return loaded(std::move(texts), report);
}

namespace {

// The rules of meaning.
struct Meaning {
  const Library& library;
  const Family& family;
  const FamilyFiles& files;
  FurtherCheck further;
  Report& report;
};

void validate_procedure_file(const Meaning& m) {
  const Check of_procedure{m.library, m.family, m.files.procedure.path, m.report};
  validate_procedure(of_procedure);
  validate_run_through(of_procedure);
  validate_people(of_procedure);
}

// Both files could be read: what spans them.
void validate_whole(const Meaning& m) {
  const auto& [library, family, files, further, report] = m;
  const Check of_procedure{library, family, files.procedure.path, report};
  const Check of_questions{library, family, files.questions.path, report};
  validate_questions(of_questions);
  validate_bank(of_questions);
  validate_probing(of_procedure);
  if (further != nullptr && report.all_resolves()) {
    for (auto& finding : further(family, files.procedure.path, files.questions.path))
      report.findings().push_back(std::move(finding));
  }
  for (const auto& [language, file] : files.texts)
    (void)read_family_texts(family, language, file, report);
  if (files.poses) check_poses(of_procedure, of_questions, *files.poses);
}

bool was_checked(const Library& library, const Id& id, const FamilyFiles& files) {
  const auto found = library.checked.find(id);
  return found != library.checked.end() &&
         found->second == content_id(files.procedure, files.questions);
}

}  // namespace

Loaded<Family> load_family(const Library& library, const Id& id, const FamilyFiles& files,
                           FurtherCheck further) {
  Report report;
  Family family;
  family.id = id;
  const auto procedure = parse_json(files.procedure, report);
  const auto questions = parse_json(files.questions, report);
  if (procedure) read_procedure({&*procedure, files.procedure.path, "", report}, family);
  if (questions) read_questions({&*questions, files.questions.path, "", report}, family);
  report.form_is_read();
  if (!was_checked(library, id, files)) {
    const Meaning meaning{library, family, files, further, report};
    if (procedure) validate_procedure_file(meaning);
    if (procedure && questions) validate_whole(meaning);
  }
  return loaded(std::move(family), report);
}

Loaded<Texts> load_family_texts(const Family& family, const Id& language, const ContentFile& file) {
  Report report;
  Texts texts = read_family_texts(family, language, file, report);
  return loaded(std::move(texts), report);
}

Loaded<Texts> load_library_texts(const Library& library, const ContentFile& file) {
  Report report;
  Texts texts;
  if (const auto json = parse_json(file, report)) {
    texts = read_texts({&*json, file.path, "", report});
    compare_sentences(texts, needed_sentences(library), "finder/", file, report);
  }
  return loaded(std::move(texts), report);
}

}  // namespace rehale::catalog
