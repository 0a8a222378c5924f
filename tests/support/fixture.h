// The small good family of tests/fixtures/family-ok, as files to break and as loaded content.
#pragma once

#include <string>
#include <vector>

#include "core/catalog/load.h"

namespace rehale::support {

// Directory of the checkout.
[[nodiscard]] std::string source_path(const std::string& relative);

// Bytes in a buffer of exactly their size, so that reading past the end is seen by the sanitizer.
[[nodiscard]] catalog::ContentFile exact(std::string path, const std::string& bytes);

[[nodiscard]] catalog::ContentFile ok_file(const std::string& name);  // "procedure.json"
[[nodiscard]] catalog::Library ok_library();
[[nodiscard]] catalog::FamilyFiles ok_files();
[[nodiscard]] catalog::Family ok_family();

// The files loaded as that family, all checks on.
[[nodiscard]] catalog::Loaded<catalog::Family> load_bubble_pipe(const catalog::FamilyFiles& files);
// The first `from` in the file becomes `to`; aborts when there is none.
void replace_in(catalog::ContentFile& file, const std::string& from, const std::string& to);
// Findings as rehale_validate prints them.
[[nodiscard]] std::string said(const std::vector<catalog::Finding>& findings);

}  // namespace rehale::support
