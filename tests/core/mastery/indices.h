// Other indices for choosing a question, by plain sums over states: what the product does not use
// but the golden numbers of facts/diagnosis.md 1.6 (b) give. Formulas: 1.5 there, summed over
// columns.
#pragma once

#include <cmath>
#include <span>
#include <vector>

#include "core/mastery/evidence.h"

namespace rehale::mastery {

struct Indices {
  double right = 0, mi = 0, she = 0, pwkl = 0, mpwkl = 0, gdi = 0;
};

inline std::vector<double> column_chances(const Piece& piece, Bits state) {
  int group = 0;
  while (piece.at[static_cast<std::size_t>(group)] != (state & piece.mask)) ++group;
  std::vector<double> row;
  for (int c = 0; c < piece.columns; ++c) row.push_back(piece.chance(group, c));
  return row;
}

inline double kullback_leibler(const std::vector<double>& p, const std::vector<double>& q) {
  double sum = 0;
  for (std::size_t c = 0; c < p.size(); ++c) sum += p[c] * std::log(p[c] / q[c]);
  return sum;
}

inline double shannon(std::span<const double> p) {
  double sum = 0;
  for (const double x : p) sum -= x > 0 ? x * std::log(x) : 0;
  return sum;
}

// Column 0 is the right answer.
inline Indices brute_indices(std::span<const double> states, const Piece& piece) {
  Indices found;
  Bits likeliest = 0;
  for (Bits a = 0; a < states.size(); ++a) {
    found.right += states[a] * column_chances(piece, a)[0];
    if (states[a] > states[likeliest]) likeliest = a;
  }
  for (int c = 0; c < piece.columns; ++c) {
    std::vector<double> after;
    double chance = 0;
    for (Bits a = 0; a < states.size(); ++a) {
      after.push_back(states[a] * column_chances(piece, a)[static_cast<std::size_t>(c)]);
      chance += after.back();
    }
    for (double& mass : after) mass /= chance;
    found.she += chance * shannon(after);
  }
  found.mi = shannon(states) - found.she;
  for (Bits a = 0; a < states.size(); ++a) {
    const std::vector<double> row = column_chances(piece, a);
    found.pwkl += states[a] * kullback_leibler(column_chances(piece, likeliest), row);
    found.gdi += states[a] * (row[0] - found.right) * (row[0] - found.right);
    for (Bits b = 0; b < states.size(); ++b) {
      found.mpwkl += states[a] * states[b] * kullback_leibler(row, column_chances(piece, b));
    }
  }
  return found;
}

}  // namespace rehale::mastery
