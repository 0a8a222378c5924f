// The gates of facts/diagnosis.md 6.4 on made-up banks, and a report without gates for any bank.
#pragma once

#include <string>

#include "tests/sim/bank.h"
#include "tests/sim/report.h"

namespace rehale::sim {

// people: in each condition of the reference bank (the protocol wants 4,000).
void check_reference_bank(Gates& gates, int people);
void check_misconceptions(Gates& gates, int people);
void check_kaplan(Gates& gates, int people);

// Any bank, taken as its own truth: the product's plan against its rivals, and with careless
// people and people who are not as its tables and prior say (mistaken.h). Figures only.
void run_sim(const std::string& name, const mastery::Bank& bank, int people);

}  // namespace rehale::sim
