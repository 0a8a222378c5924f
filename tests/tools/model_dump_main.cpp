// rehale_model_dump FAMILY: a shipped family's model and bank as the JSON of
// tests/support/bank_json.h, for simulations. rehale_model_dump FAMILY SEED: {"bank":…, "run":…}
// with a made-up run on it (tests/support/run_json.h), for the independent enumeration in Python.
#include <cstdio>
#include <cstdlib>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/support/run_json.h"

int main(int argc, char** argv) {
  const rehale::check::Course* course =
      argc == 2 || argc == 3 ? rehale::support::shipped_course(argv[1]) : nullptr;
  if (course == nullptr) {
    std::fprintf(stderr,
                 "usage: rehale_model_dump FAMILY [SEED] (FAMILY: one of assets/library.json)\n");
    return 1;
  }
  nlohmann::json json = rehale::support::bank_to_json(course->bank);
  if (argc == 3) {
    const auto seed = static_cast<std::uint64_t>(std::strtoull(argv[2], nullptr, 10));
    json = {{"bank", json}, {"run", rehale::support::made_up_run(course->bank, seed)}};
  }
  std::puts(json.dump().c_str());
  return 0;
}
