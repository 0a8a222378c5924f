// Reading files in tests and tools: core itself never does.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/catalog/load.h"

namespace rehale::support {

[[nodiscard]] std::optional<std::string> read_file(const std::string& path);

// A file of content under the name `path`, read from `folder` + path. Not there: findings get one.
[[nodiscard]] catalog::ContentFile read_content(const std::string& folder, const std::string& path,
                                                std::vector<catalog::Finding>& findings);

// folder + "families/<family>/…" as load_family takes it; poses when the folder has them.
[[nodiscard]] catalog::FamilyFiles read_family(const std::string& folder,
                                               const catalog::Library& library,
                                               const catalog::Id& family,
                                               std::vector<catalog::Finding>& findings);

}  // namespace rehale::support
