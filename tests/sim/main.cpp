// rehale_sim: simulated people, nothing else. It shows that the inference is right and efficient if
// answers are as the tables say; it does not show that real people are classified rightly.
//   rehale_sim [people]            gates on the reference banks; exit 1 when one does not hold
//   rehale_sim --bank FILE NAME [people]   figures for a dumped bank (tests/support/bank_json.h)
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "tests/sim/gates.h"
#include "tests/support/bank_json.h"

int main(int count, char** words) {
  using namespace rehale::sim;
  if (count >= 4 && std::strcmp(words[1], "--bank") == 0) {
    const auto bank = rehale::support::read_bank(words[2]);
    if (!bank) {
      std::fprintf(stderr, "%s: %s\n", bank.error().where.c_str(), bank.error().detail.c_str());
      return 2;
    }
    run_sim(words[3], *bank, count > 4 ? std::atoi(words[4]) : 4000);
    return 0;
  }
  const int people = count > 1 ? std::atoi(words[1]) : 4000;
  if (people < 100) {
    std::fprintf(stderr, "rehale_sim [people >= 100] or rehale_sim --bank FILE NAME [people]\n");
    return 2;
  }
  Gates gates;
  check_reference_bank(gates, people);
  check_misconceptions(gates, people * 3 / 5);
  check_kaplan(gates, people / 5);
  std::printf(gates.missed() == 0 ? "All gates hold.\n" : "%d gates do not hold.\n",
              gates.missed());
  return gates.missed() == 0 ? 0 : 1;
}
