#include "core/mastery/identify.h"

#include <algorithm>
#include <bit>
#include <map>
#include <utility>
#include <vector>

namespace rehale::mastery {
namespace {

// Group -> the first group with the very same row: groups that no answer tells apart.
std::vector<std::size_t> row_names(const Piece& piece) {
  const auto columns = static_cast<std::ptrdiff_t>(piece.columns);
  std::vector<std::size_t> names(piece.at.size());
  for (std::size_t g = 0; g < names.size(); ++g) {
    const auto row = piece.rows.begin() + static_cast<std::ptrdiff_t>(g) * columns;
    names[g] = g;
    for (std::size_t h = 0; h < g; ++h) {
      const auto other = piece.rows.begin() + static_cast<std::ptrdiff_t>(h) * columns;
      if (std::equal(row, row + columns, other)) {
        names[g] = h;
        break;
      }
    }
  }
  return names;
}

std::size_t group_of(const Piece& piece, Bits state) {
  std::size_t group = 0;
  std::size_t place = 1;
  for (Bits left = piece.mask; left != 0; left &= left - 1, place *= 2) {
    if ((state & left & (~left + 1)) != 0) group |= place;
  }
  return group;
}

// Splits classes of states by what one more piece says of them.
std::size_t refine(std::vector<std::size_t>& classes, const std::vector<Bits>& states,
                   const Piece& piece) {
  const std::vector<std::size_t> names = row_names(piece);
  std::map<std::pair<std::size_t, std::size_t>, std::size_t> renamed;
  for (std::size_t i = 0; i < states.size(); ++i) {
    const auto key = std::pair(classes[i], names[group_of(piece, states[i])]);
    classes[i] = renamed.try_emplace(key, renamed.size()).first->second;
  }
  return renamed.size();
}

}  // namespace

std::size_t told_apart(std::span<const Bits> needs, int bits) {
  std::vector<std::vector<bool>> ideal;
  for (Bits state = 0; state < bit(bits); ++state) {
    std::vector<bool> answers;
    for (const Bits need : needs) answers.push_back((state & need) == need);
    ideal.push_back(std::move(answers));
  }
  std::sort(ideal.begin(), ideal.end());
  return static_cast<std::size_t>(std::unique(ideal.begin(), ideal.end()) - ideal.begin());
}

std::size_t feasible_states(const Model& model) {
  std::size_t count = 0;
  for (Bits state = 0; state < model.states(); ++state) count += model.feasible(state) ? 1U : 0U;
  return count;
}

std::size_t told_apart(const Bank& bank) {
  std::vector<Bits> states;
  for (Bits state = 0; state < bank.model.states(); ++state) {
    if (bank.model.feasible(state)) states.push_back(state);
  }
  std::vector<std::size_t> classes(states.size(), 0);
  std::size_t count = 1;
  for (const Item& item : bank.items) {
    for (const Piece& piece : item.pieces) count = refine(classes, states, piece);
  }
  return count;
}

Estimable estimable(std::span<const Bits> needs, int bits) {
  Estimable found{true, true, true};
  std::vector<Bits> rest(needs.begin(), needs.end());
  for (int k = 0; k < bits; ++k) {
    const auto alone = std::find(rest.begin(), rest.end(), bit(k));
    if (alone == rest.end()) found.alone = false;
    else rest.erase(alone);
    const auto uses =
        std::count_if(needs.begin(), needs.end(), [&](Bits need) { return (need & bit(k)) != 0; });
    if (uses < 3) found.thrice = false;
  }
  for (int k = 0; k < bits; ++k) {
    for (int other = 0; other < k; ++other) {
      const bool alike = std::all_of(rest.begin(), rest.end(), [&](Bits need) {
        return ((need & bit(k)) != 0) == ((need & bit(other)) != 0);
      });
      if (alike) found.distinct = false;
    }
  }
  return found;
}

}  // namespace rehale::mastery
