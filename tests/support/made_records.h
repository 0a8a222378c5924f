// Made-up records for tests of core/cohort: random ones, and ones with given answers.
#pragma once

#include <string>
#include <vector>

#include "core/base/rng.h"
#include "core/cohort/record.h"

namespace rehale::support {

inline cohort::Record random_record(Rng& rng) {
  const char* families[] = {"spray", "powder-lever", "soft-mist"};
  cohort::Record record{.key = rng.next(), .family = families[rng.below(3)]};
  record.language = rng.below(4) == 0 ? "es" : "en";
  record.again = rng.below(2) == 0;
  record.helped = rng.below(5) == 0;
  record.day = static_cast<Day>(20000 + rng.below(300));
  if (rng.below(3) != 0) record.person = static_cast<std::uint32_t>(rng.below(400));
  record.questions = 20;
  record.held = static_cast<std::uint16_t>(rng.below(16));
  for (int k = 0; k < 10; ++k) {
    record.techniques.push_back(
        {static_cast<cohort::Told>(rng.below(4)), static_cast<std::uint16_t>(rng.below(65536))});
  }
  std::vector<int> asked(20);
  for (int n = 0; n < 20; ++n) asked[static_cast<std::size_t>(n)] = n;
  shuffle(asked, rng);
  asked.resize(static_cast<std::size_t>(8 + rng.below(5)));
  for (const int n : asked) {
    record.items.push_back({static_cast<std::uint16_t>(n), rng.below(2) == 0, rng.below(8) == 0});
  }
  return record;
}

inline std::vector<cohort::Record> random_records(std::size_t count, std::uint64_t seed) {
  Rng rng(seed);
  std::vector<cohort::Record> records;
  for (std::size_t n = 0; n < count; ++n) records.push_back(random_record(rng));
  return records;
}

// "10-1": question 0 right, 1 not, 2 not asked, 3 right.
inline cohort::Record record_of_answers(const std::string& answers) {
  cohort::Record record{.family = "spray", .language = "en"};
  record.questions = static_cast<std::uint16_t>(answers.size());
  for (std::size_t n = 0; n < answers.size(); ++n) {
    if (answers[n] == '-') continue;
    record.items.push_back({static_cast<std::uint16_t>(n), answers[n] == '1', false});
  }
  return record;
}

}  // namespace rehale::support
