// A group of invented people: each has a hidden state drawn from the family's prior, answers as the
// response tables say, and some come back after coaching. In one language of one family a weakness
// is planted, for a desk to find. Every result is marked as made up.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/check/run.h"
#include "core/exchange/result_code.h"

namespace rehale::support {

struct DemoPlan {
  std::size_t people = 2000;
  std::uint64_t seed = 1;
  double back_again = .4;  // share that does a second check, 4 weeks or so later
  double learned = .6;     // of what was lacking, by then
  std::string other_language = "pt";
  double other_share = .3;
  std::string planted_family = "powder-lever", planted_technique = "not-into-device";
  double planted_share = .75;  // of those in the other language lack it at their first check
  Day today = 20782;
};

struct DemoResult {
  exchange::ResultHead head;
  check::Log log;
};

// People take turns through the courses. `take` gets each result as it is made.
void demo_group(const DemoPlan& plan, const std::vector<const check::Course*>& courses,
                const std::function<void(const check::Course&, const DemoResult&)>& take);

}  // namespace rehale::support
