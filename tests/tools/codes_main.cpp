// rehale_codes [VERSION]: one made-up code a line, results with the log that must come back behind
// a tab. tests/fixtures/codes holds its output of every version that was ever released.
#include <cstdio>
#include <cstdlib>

#include "tests/support/made_codes.h"

int main(int count, char** words) {
  const int version = count > 1 ? static_cast<int>(std::strtol(words[1], nullptr, 10)) : 1;
  for (const auto& made : rehale::support::made_codes(version)) {
    std::printf("%s\t%s\n", made.code.c_str(), made.log.c_str());
  }
  return 0;
}
