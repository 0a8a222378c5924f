// rehale_model_dump FAMILY: a shipped family's model and bank as the JSON of tests/support/bank_json.h,
// for the independent enumeration in Python and for simulations.
#include <cstdio>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"

int main(int argc, char** argv) {
  const rehale::check::Course* course =
      argc == 2 ? rehale::support::shipped_course(argv[1]) : nullptr;
  if (course == nullptr) {
    std::fprintf(stderr, "usage: rehale_model_dump FAMILY (one of assets/library.json)\n");
    return 1;
  }
  std::puts(rehale::support::bank_to_json(course->bank).dump().c_str());
  return 0;
}
