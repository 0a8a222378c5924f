// The gates of facts/diagnosis.md 6.4 on made-up banks, and a report without gates for any bank.
#pragma once

#include <string>

#include "tests/sim/bank.h"
#include "tests/sim/tally.h"

namespace rehale::sim {

// Prints a gate and whether it holds; counts those that do not.
class Gates {
 public:
  void at_least(const char* name, double value, double bound);
  void at_most(const char* name, double value, double bound);
  void within(const char* name, double value, double wanted, double tolerance);
  [[nodiscard]] int missed() const { return missed_; }

 private:
  void report(const char* name, bool holds, double value, const char* relation, double bound);
  int missed_ = 0;
};

void print_header();
void print_row(const std::string& name, const Tally& tally);

// people: in each condition of the reference bank (the protocol wants 4,000).
void check_reference_bank(Gates& gates, int people);
void check_misconceptions(Gates& gates, int people);
void check_kaplan(Gates& gates, int people);

// Any bank, taken as its own truth: the product's plan against its rivals, and under careless and
// mistaken tables. Figures only.
void run_sim(const std::string& name, const mastery::Bank& bank, int people);

}  // namespace rehale::sim
