#include "tests/sim/people.h"

#include <cstddef>

#include "core/base/rng.h"

namespace rehale::sim {
namespace {

std::size_t group_of(const mastery::Piece& piece, mastery::Bits state) {
  for (std::size_t group = 0; group < piece.at.size(); ++group) {
    if (piece.at[group] == (state & piece.mask)) return group;
  }
  return 0;
}

int tap(const mastery::Piece& piece, const Person& person, Rng& rng) {
  double left = rng.uniform();
  const int group = static_cast<int>(group_of(piece, person.state));
  for (int column = 0; column < piece.columns - 1; ++column) {
    left -= person.careless ? 1.0 / piece.columns : piece.chance(group, column);
    if (left < 0) return column;
  }
  return piece.columns - 1;
}

}  // namespace

Person make_person(const World& world, std::uint64_t seed) {
  Rng rng(seed);
  Person person;
  person.seed = rng.next();
  person.careless = rng.uniform() < world.careless;
  double left = rng.uniform();
  const std::vector<double>& prior = world.truth.model.prior;
  for (std::size_t state = 0; state < prior.size(); ++state) {
    if (prior[state] > 0) person.state = static_cast<mastery::Bits>(state);
    left -= prior[state];
    if (left < 0) break;
  }
  return person;
}

std::vector<int> answer(const World& world, const Person& person, int item) {
  const auto& pieces = world.truth.items[static_cast<std::size_t>(item)].pieces;
  Rng rng(person.seed + 0x632be59bd9b4e019ULL * (static_cast<std::uint64_t>(item) + 1));
  std::vector<int> columns;
  for (const mastery::Piece& piece : pieces) {
    const bool skipped = !columns.empty() && columns[0] == mastery::k_unsure;
    const int column = tap(piece, person, rng);
    columns.push_back(skipped ? -1 : column);
  }
  return columns;
}

}  // namespace rehale::sim
