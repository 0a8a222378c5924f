// rehale_codes: one made-up code a line, results with the log that must come back behind a tab.
// tests/fixtures/codes holds its output of every version that was ever released.
#include <cstdio>

#include "tests/support/made_codes.h"

int main() {
  for (const auto& made : rehale::support::made_codes()) {
    std::printf("%s\t%s\n", made.code.c_str(), made.log.c_str());
  }
  return 0;
}
