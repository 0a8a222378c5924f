// Reading files in tests and tools: core itself never does.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/catalog/load.h"

namespace rehale::support {

// Directory of the checkout, with '/' at its end: REHALE_ROOT of the environment, else the working
// directory.
[[nodiscard]] std::string root();

[[nodiscard]] std::optional<std::string> read_file(const std::string& path);

// A file of content under the name `path`, read from `folder` + path. Not there: findings get one.
[[nodiscard]] catalog::ContentFile read_content(const std::string& folder, const std::string& path,
                                                std::vector<catalog::Finding>& findings);

// assets/families/<family> as load_family takes it; poses when the folder has them.
[[nodiscard]] catalog::FamilyFiles read_family(const std::string& folder,
                                               const catalog::Library& library,
                                               const catalog::Id& family,
                                               std::vector<catalog::Finding>& findings);

}  // namespace rehale::support
