// Content checks that need the device or the closed order: on top of core/catalog's own.
// Must not know files: paths are only quoted in findings.
#pragma once

#include <string>
#include <vector>

#include "core/catalog/model.h"

namespace rehale::procedure {

// The `further` check of catalog::load_family. The family must name nothing that it has not (a name
// that is unknown stops the check). Rules: "rule-cycle" (names it), "ideal-run" (the ideal list
// breaks something, or does not inhale exactly one dose and waste none), "order-too-free" (under 2
// constraints), "order-techniques" (the question's techniques are not those of its constraints).
[[nodiscard]] std::vector<catalog::Finding> check_family_runs(const catalog::Family& family,
                                                              const std::string& procedure_path,
                                                              const std::string& questions_path);

}  // namespace rehale::procedure
