// One made-up run on a bank as JSON, for Python to work out again
// (tests/reference/mastery/make.py).
// {"seed":1,"steps":[{"item":3,"columns":[0],"worth":{"decision":…,"whole":…,"about":[…]},
//   "evidence":…,"marginals":[…],"told":[..K],"entropy":…,"map":…}],"end":"decided"}
#pragma once

#include <cstdint>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/base/rng.h"
#include "core/mastery/diagnosis.h"

namespace rehale::support {

inline const char* stop_name(mastery::Stop stop) {
  switch (stop) {
    case mastery::Stop::decided:
      return "decided";
    case mastery::Stop::nothing_useful:
      return "nothing_useful";
    case mastery::Stop::longest:
      return "longest";
    case mastery::Stop::no_item_left:
      return "no_item_left";
    case mastery::Stop::go_on:
      break;
  }
  return "go_on";
}

// Asks the item, gives the answer and says what was known before and after.
inline nlohmann::json play(mastery::Diagnosis& run, const mastery::Bank& bank, int item,
                           const std::vector<int>& columns) {
  const mastery::Worth before = run.worth_of(item);
  const auto bits = static_cast<std::size_t>(bank.model.bits());
  nlohmann::json step{{"item", item}, {"columns", columns}};
  step["worth"] = {
      {"decision", before.decision},
      {"whole", before.whole},
      {"about", std::vector<double>(before.about.begin(), before.about.begin() + bits)}};
  run.ask(item);
  mastery::Posterior alone = run.posterior();
  double evidence = 1;
  const auto& pieces = bank.items[static_cast<std::size_t>(item)].pieces;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (columns[i] >= 0) evidence *= alone.update(pieces[i], columns[i]);
  }
  run.answer(item, columns);
  step["evidence"] = evidence;
  for (std::size_t k = 0; k < bits; ++k) {
    step["marginals"].push_back(run.probability(static_cast<int>(k)));
  }
  for (int k = 0; k < bank.model.techniques; ++k) step["told"].push_back(run.told(k));
  step["entropy"] = run.posterior().entropy();
  step["map"] = run.posterior().most_likely();
  return step;
}

// Columns drawn as somebody in this state would answer; after a first "not sure" the rest is -1.
inline std::vector<int> made_up_answer(const mastery::Item& item, mastery::Bits state, Rng& rng) {
  std::vector<int> columns;
  for (const mastery::Piece& piece : item.pieces) {
    int group = 0;
    while (piece.at[static_cast<std::size_t>(group)] != (state & piece.mask)) ++group;
    double left = rng.uniform();
    int column = 0;
    while (column < piece.columns - 1 && left >= piece.chance(group, column)) {
      left -= piece.chance(group, column++);
    }
    columns.push_back(!columns.empty() && columns[0] == mastery::k_unsure ? -1 : column);
  }
  return columns;
}

inline nlohmann::json made_up_run(const mastery::Bank& bank, std::uint64_t seed) {
  Rng rng(seed);
  mastery::Bits state = 0;
  double left = rng.uniform();
  while (state + 1 < bank.model.states() && left >= bank.model.prior[state]) {
    left -= bank.model.prior[state++];
  }
  mastery::Diagnosis run(bank, mastery::Plan{}, seed);
  nlohmann::json json{{"seed", seed}, {"steps", nlohmann::json::array()}};
  mastery::Next next = run.next();
  for (; next.stop == mastery::Stop::go_on; next = run.next()) {
    const mastery::Item& item = bank.items[static_cast<std::size_t>(next.item)];
    json["steps"].push_back(play(run, bank, next.item, made_up_answer(item, state, rng)));
  }
  json["end"] = stop_name(next.stop);
  return json;
}

}  // namespace rehale::support
