// Small models and pieces for the tests of mastery; what cannot be made stops the test program.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <utility>
#include <vector>

#include "core/base/rng.h"
#include "core/mastery/diagnosis.h"

namespace rehale::tests {

template <class T>
T sure(Result<T> result) {
  if (!result) {
    std::fprintf(stderr, "%s at %s: %s\n", result.error().code.c_str(),
                 result.error().where.c_str(), result.error().detail.c_str());
    std::abort();
  }
  return std::move(*result);
}

// The first `critical` techniques are critical, of weight 1.
inline mastery::Model model_with(int techniques, std::vector<double> prior, int critical = 0) {
  std::vector<mastery::TechniqueSpec> list(static_cast<std::size_t>(techniques));
  for (int k = 0; k < critical; ++k) list[static_cast<std::size_t>(k)].critical = true;
  return sure(mastery::make_model(mastery::People{list, {}}, std::move(prior)));
}

inline mastery::Model uniform_model(int techniques, int critical = 0) {
  const std::size_t states = std::size_t{1} << static_cast<unsigned>(techniques);
  return model_with(techniques, std::vector<double>(states, 1 / static_cast<double>(states)),
                    critical);
}

// Right (column 0) with 1 - slip when all needed bits are there, else with guess.
inline mastery::Piece right_wrong(mastery::Bits needs, double slip, double guess) {
  int bits = 0;
  for (mastery::Bits left = needs; left != 0; left &= left - 1) ++bits;
  std::vector<double> rows;
  for (mastery::Bits group = 0; group < mastery::bit(bits); ++group) {
    const double right = group + 1 == mastery::bit(bits) ? 1 - slip : guess;
    rows.insert(rows.end(), {right, 1 - right});
  }
  return sure(mastery::make_piece(needs, 2, std::move(rows)));
}

inline mastery::Item item_of(mastery::Piece piece, int kind = 0) {
  mastery::Item item;
  item.pieces.push_back(std::move(piece));
  item.kind = kind;
  return item;
}

// `each` right/wrong items for every technique, and as many that need two neighbours.
inline mastery::Bank simple_bank(int techniques, int critical, int each) {
  mastery::Bank bank{uniform_model(techniques, critical), {}};
  Rng rng(9);
  for (int i = 0; i < techniques * each; ++i) {
    const int k = i % techniques;
    const auto one = mastery::bit(k);
    const auto two = one | mastery::bit((k + 1) % techniques);
    for (const auto needs : {one, two}) {
      const double slip = rng.uniform(.05, .15);
      const double guess = rng.uniform(.1, .2);
      bank.items.push_back(item_of(right_wrong(needs, slip, guess), i));
    }
  }
  return bank;
}

}  // namespace rehale::tests
