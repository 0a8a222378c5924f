// The shipped families, made ready for runs. A family that does not load is a failed test.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/check/run.h"

namespace rehale::support {

// Ids of the shipped families, from assets/library.json.
[[nodiscard]] const std::vector<std::string>& shipped_families();

// nullptr when its content has findings (printed).
[[nodiscard]] const check::Course* shipped_course(const std::string& family);

// Answers a whole check as a person would who lacks exactly these techniques and holds these
// misconceptions, and never slips: right when they have all it needs, else the option that betrays
// them.
[[nodiscard]] check::Answer scripted_answer(const check::Course& course, int question,
                                            const std::vector<std::string>& lacks,
                                            const std::vector<std::string>& holds);
struct Script {
  std::vector<std::string> lacks, holds;
  std::uint64_t seed = 1;
  std::vector<std::string> recent;
  std::vector<std::string> focus = {};
  int questions = 0;
};
[[nodiscard]] check::Run scripted_run(const check::Course& course, const Script& script);

}  // namespace rehale::support
