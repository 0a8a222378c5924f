#include "tests/sim/report.h"

#include <cmath>
#include <cstdio>

#include "tests/sim/mcnemar.h"

namespace rehale::sim {
namespace {

struct Discordant {
  int only_first = 0, only_second = 0;
};

Discordant compare(const Tally& first, const Tally& second) {
  Discordant found;
  for (std::size_t i = 0; i < first.all_critical_by_person().size(); ++i) {
    const bool a = first.all_critical_by_person()[i];
    const bool b = second.all_critical_by_person()[i];
    found.only_first += a && !b ? 1 : 0;
    found.only_second += b && !a ? 1 : 0;
  }
  return found;
}

}  // namespace

void Gates::report(const char* name, bool holds, double value, const char* relation, double bound) {
  std::printf("  %-4s %-36s %.4g %s %.4g\n", holds ? "ok" : "MISS", name, value, relation, bound);
  missed_ += holds ? 0 : 1;
}
void Gates::at_least(const char* name, double value, double bound) {
  report(name, value >= bound, value, ">=", bound);
}
void Gates::at_most(const char* name, double value, double bound) {
  report(name, value <= bound, value, "<=", bound);
}
void Gates::within(const char* name, double value, double wanted, double tolerance) {
  report(name, std::fabs(value - wanted) <= tolerance, value, "~", wanted);
}

void print_header() {
  std::printf("%-26s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s %6s\n", "", "skill",
              "patt", "crit", "allcr", "FM", "FG", "FMlab", "Brier", "logl", "ECE", "aECE", "items",
              "decid", "cover");
}

void print_row(const std::string& name, const Tally& t) {
  std::printf(
      "%-26s %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.3f %6.2f %6.3f "
      "%6.4f\n",
      name.c_str(), t.skill(), t.pattern(), t.critical(), t.all_critical(), t.false_mastery(),
      t.false_gap(), t.false_label(), t.brier(), t.log_loss(), t.ece(), t.adaptive_ece(), t.items(),
      t.decided(), t.covered());
}

double print_paired(const char* name, const Tally& ours, const Tally& rival) {
  const Discordant found = compare(ours, rival);
  const double p = mcnemar_exact(found.only_first, found.only_second);
  std::printf("  all critical right, %s: %d only adaptive, %d only fixed, exact p = %.2g\n", name,
              found.only_first, found.only_second, p);
  return p;
}

}  // namespace rehale::sim
