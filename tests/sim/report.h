// The lines a simulation prints, and the gates it has to pass.
#pragma once

#include <string>

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
// Who had all critical techniques right with one method only; returns the exact McNemar p.
double print_paired(const char* name, const Tally& adaptive, const Tally& fixed);

}  // namespace rehale::sim
