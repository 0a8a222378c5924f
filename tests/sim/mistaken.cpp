#include "tests/sim/mistaken.h"

#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <utility>
#include <vector>

#include "core/base/rng.h"

namespace rehale::sim {
namespace {

using mastery::bit;
using mastery::Bits;
using mastery::Piece;

constexpr double k_off_by = 2;

double factor(Rng& rng) {
  const double off = rng.uniform(1, k_off_by);
  return rng.below(2) == 0 ? off : 1 / off;
}

Piece otherwise(const Piece& piece, Rng& rng) {
  std::vector<double> rows = piece.rows;
  for (double& chance : rows) chance *= factor(rng);
  auto made = mastery::make_piece(piece.mask, piece.columns, std::move(rows));
  if (!made) {  // a mistake in this file
    std::fprintf(stderr, "%s: %s\n", made.error().where.c_str(), made.error().detail.c_str());
    std::abort();
  }
  return std::move(*made);
}

std::vector<double> other_prior(const mastery::Model& model, Rng& rng) {
  std::vector<double> prior = model.prior;
  for (int k = 0; k < model.bits(); ++k) {
    const double odds = factor(rng);
    for (Bits state = 0; state < prior.size(); ++state) {
      if ((state & bit(k)) != 0) prior[state] *= odds;
    }
  }
  double sum = 0;
  for (const double mass : prior) sum += mass;
  for (double& mass : prior) mass /= sum;
  return prior;
}

}  // namespace

World mistaken(const mastery::Bank& believed, std::uint64_t seed) {
  Rng rng(seed);
  World world{believed, believed, 0};
  world.truth.model.prior = other_prior(believed.model, rng);
  for (mastery::Item& item : world.truth.items) {
    for (Piece& piece : item.pieces) piece = otherwise(piece, rng);
  }
  return world;
}

}  // namespace rehale::sim
