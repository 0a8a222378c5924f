// Content files -> checked content. Every finding at once; a value only when there is none.
// Must not know where the bytes come from. The rules are listed in DEVELOPERS.md ("Content").
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/catalog/model.h"

namespace rehale::catalog {

// assets/library.json
[[nodiscard]] Loaded<Library> load_library(const ContentFile& file);

// Any text file, flattened: {"a":{"b":"x"}} -> "a/b": "x". "schema", "family" and "language" at the
// top are left out. Findings: form, "empty-text", "wrong-type" (a leaf that is no text).
[[nodiscard]] Loaded<Texts> load_texts(const ContentFile& file);

struct FamilyFiles {
  struct Language {
    Id language;
    ContentFile file;
  };
  ContentFile procedure, questions;
  std::vector<Language> texts;       // those at hand; each is checked for completeness
  std::optional<ContentFile> poses;  // when given, every pose named must be in it
};

// A check of a layer above, core/procedure's check_family_runs: what can only be told by running
// the device or closing the order rules. Gets the family and the paths of its procedure and
// questions.
using FurtherCheck = std::vector<Finding> (*)(const Family& family,
                                              const std::string& procedure_path,
                                              const std::string& questions_path);

// One folder assets/families/<family>. `further` is asked when every name in the family is known.
// When library.checked names these very bytes, only their form is read: they were found good
// before.
[[nodiscard]] Loaded<Family> load_family(const Library& library, const Id& family,
                                         const FamilyFiles& files, FurtherCheck further = nullptr);

// text.<language>.json of a family: every sentence that it needs and no other.
[[nodiscard]] Loaded<Texts> load_family_texts(const Family& family, const Id& language,
                                              const ContentFile& file);

// assets/text/<language>.json: the sentences the library itself needs (finder/…), present and no
// other below finder/.
[[nodiscard]] Loaded<Texts> load_library_texts(const Library& library, const ContentFile& file);

}  // namespace rehale::catalog
