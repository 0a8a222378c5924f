#include "tests/sim/bank.h"

#include <bit>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <utility>

#include "core/base/portable_math.h"
#include "core/base/rng.h"

namespace rehale::sim {
namespace {

using mastery::Bank;
using mastery::bit;
using mastery::Bits;
using mastery::Item;
using mastery::Model;
using mastery::Piece;

constexpr int k_techniques = 12;
constexpr int k_critical = 5;
constexpr double k_slope = 1.7;
constexpr double k_easiest = -.9,
                 k_hardest = .2;  // difficulties, evenly: shares .44 to .74, mean .6
constexpr double k_telling = 6;   // see option_piece

// A made-up bank that cannot be made is a mistake in this file.
template <class T>
T sure(Result<T> result) {
  if (!result) {
    std::fprintf(stderr, "%s: %s\n", result.error().where.c_str(), result.error().detail.c_str());
    std::abort();
  }
  return std::move(*result);
}

struct Ability {
  double value, share;
};

// N(0,1) on 81 points from -5 to 5: the trapezium rule is exact to 1e-6 here.
std::vector<Ability> abilities() {
  std::vector<Ability> list;
  double sum = 0;
  for (int i = 0; i <= 80; ++i) {
    const double value = -5 + i * .125;
    list.push_back({value, portable_exp(-value * value / 2)});
    sum += list.back().share;
  }
  for (Ability& ability : list) ability.share /= sum;
  return list;
}

// The hardest and the easiest are neither all critical nor all not: 0, 5, 10, 3, 8 … of 12.
double rate(int technique, double ability) {
  const int place = technique * 5 % k_techniques;
  const double difficulty = k_easiest + (k_hardest - k_easiest) * place / (k_techniques - 1);
  return 1 / (1 + portable_exp(-k_slope * (ability - difficulty)));
}

std::vector<double> higher_order_prior() {
  std::vector<double> prior(std::size_t{1} << k_techniques, 0);
  for (const Ability& ability : abilities()) {
    for (Bits state = 0; state < prior.size(); ++state) {
      double mass = ability.share;
      for (int k = 0; k < k_techniques; ++k) {
        const double p = rate(k, ability.value);
        mass *= (state & bit(k)) != 0 ? p : 1 - p;
      }
      prior[state] += mass;
    }
  }
  return prior;
}

std::vector<double> independent_prior(int bits, double share) {
  std::vector<double> prior(std::size_t{1} << static_cast<unsigned>(bits), 1);
  for (Bits state = 0; state < prior.size(); ++state) {
    for (int k = 0; k < bits; ++k) prior[state] *= (state & bit(k)) != 0 ? share : 1 - share;
  }
  return prior;
}

Model plain_model(int techniques, int critical, std::vector<double> prior) {
  std::vector<mastery::TechniqueSpec> list(static_cast<std::size_t>(techniques));
  for (int k = 0; k < critical; ++k) list[static_cast<std::size_t>(k)].critical = true;
  return sure(mastery::make_model({list, {}}, std::move(prior)));
}

// Item i of 100 needs one technique (55), two (33) or three (12).
std::vector<Bits> reference_needs(Rng& rng) {
  std::vector<Bits> needs;
  for (int i = 0; i < 100; ++i) {
    if (i < 55) {
      needs.push_back(bit(i % k_techniques));
      continue;
    }
    const int wanted = i < 88 ? 2 : 3;
    Bits set = 0;
    while (std::popcount(set) < wanted) set |= bit(static_cast<int>(rng.below(k_techniques)));
    needs.push_back(set);
  }
  return needs;
}

// Does this wrong option (0…2) betray exactly this lack? One technique needed: all do. Two: one the
// first, one the second, one both. Three: one each.
bool betrays(unsigned option, Bits lacks, int touched) {
  if (touched == 1) return true;
  return touched == 2 ? option + 1 == lacks : (lacks >> option & 1U) != 0;
}

// Who lacks something picks the key with g; what is left goes to the wrong options, k_telling times
// as often to one that betrays the lack. The facts give the ranges of slip and guess but not this
// number; it is set so that the bank repeats two of their figures that no gate uses or that only
// bound it from below: the random form and the gain of options over right/wrong (6.2).
Piece option_piece(Bits needs, double slip, double guess) {
  const int touched = std::popcount(needs);
  const Bits all = bit(touched) - 1;
  std::vector<double> rows;
  for (Bits group = 0; group <= all; ++group) {
    const bool ready = group == all;
    double draws[3];
    double sum = 0;
    for (unsigned o = 0; o < 3; ++o) {
      draws[o] = !ready && betrays(o, all & ~group, touched) ? k_telling : 1;
      sum += draws[o];
    }
    const double key = ready ? 1 - slip : guess;
    rows.push_back(key);
    for (const double draw : draws) rows.push_back((1 - key) * draw / sum);
  }
  return sure(mastery::make_piece(needs, 4, std::move(rows)));
}

Piece right_wrong_piece(Bits needs, double slip, double guess) {
  const auto touched = static_cast<unsigned>(std::popcount(needs));
  std::vector<double> rows;
  for (Bits group = 0; group < (Bits{1} << touched); ++group) {
    const double key = group == (Bits{1} << touched) - 1 ? 1 - slip : guess;
    rows.insert(rows.end(), {key, 1 - key});
  }
  return sure(mastery::make_piece(needs, 2, std::move(rows)));
}

Item plain_item(Piece piece, int kind) {
  Item item;
  item.pieces.push_back(std::move(piece));
  item.kind = kind;
  return item;
}

Piece scored(Bits needs, double slip, double guess, Scoring scoring) {
  return scoring == Scoring::options ? option_piece(needs, slip, guess)
                                     : right_wrong_piece(needs, slip, guess);
}

}  // namespace

Bank reference_bank(std::uint64_t seed, Quality quality, Scoring scoring) {
  Rng rng(seed);
  Bank bank{plain_model(k_techniques, k_critical, higher_order_prior()), {}};
  int number = 0;
  for (const Bits needs : reference_needs(rng)) {
    const double slip = rng.uniform(quality.low, quality.high);
    const double guess = rng.uniform(quality.low, quality.high);
    bank.items.push_back(plain_item(scored(needs, slip, guess, scoring), number++));
  }
  return bank;
}

Bank expert_bank(std::uint64_t seed, Scoring scoring) {
  Rng rng(seed);
  Bank bank{plain_model(k_techniques, k_critical, independent_prior(k_techniques, .6)), {}};
  int number = 0;
  for (const Bits needs : reference_needs(rng)) {
    bank.items.push_back(plain_item(scored(needs, .10, .15, scoring), number++));
  }
  return bank;
}

namespace {

// Techniques 0, 1, 2 can each be ruled out by a misconception, bits 12, 13, 14; a question about
// one of them has an option that betrays it. Rows: facts/diagnosis.md 1.2 "Row recipe".
Piece misconception_piece(int technique, double slip, double guess, double pull) {
  const Bits mask = bit(technique) | bit(k_techniques + technique);
  const double lacking = (1 - guess) / 3;
  const double other = (1 - .08 - pull) / 2;
  const std::vector<double> lacks = {guess, lacking, lacking, lacking};
  const std::vector<double> has = {1 - slip, slip / 3, slip / 3, slip / 3};
  const std::vector<double> holds = {.08, pull, other, other};
  std::vector<double> rows;
  for (const auto* row : {&lacks, &has, &holds, &holds}) {  // the last group has no mass
    rows.insert(rows.end(), row->begin(), row->end());
  }
  return sure(mastery::make_piece(mask, 4, std::move(rows)));
}

// Each technique apart: .6 have it; half of those who lack one of the three hold the misconception.
Model misconception_model() {
  constexpr double k_share = .5;
  std::vector<mastery::TechniqueSpec> techniques(k_techniques);
  for (int k = 0; k < k_critical; ++k) techniques[static_cast<std::size_t>(k)].critical = true;
  std::vector<mastery::MisconceptionSpec> held(3);
  for (int b = 0; b < 3; ++b) held[static_cast<std::size_t>(b)].rules_out = b;
  const std::vector<double> plain = independent_prior(k_techniques, .6);
  std::vector<double> prior(std::size_t{1} << (k_techniques + 3), 0);
  for (Bits state = 0; state < prior.size(); ++state) {
    double mass = plain[state & (bit(k_techniques) - 1)];
    for (int b = 0; b < 3; ++b) {
      const bool holds = (state & bit(k_techniques + b)) != 0;
      const bool has = (state & bit(b)) != 0;
      mass *= has ? (holds ? 0 : 1) : (holds ? k_share : 1 - k_share);
    }
    prior[state] = mass;
  }
  return sure(mastery::make_model({techniques, held}, std::move(prior)));
}

}  // namespace

Bank misconception_bank(std::uint64_t seed, double pull) {
  Rng rng(seed);
  Bank bank{misconception_model(), {}};
  for (int number = 0; number < 100; ++number) {
    const int technique = number % k_techniques;
    const double slip = rng.uniform(k_good.low, k_good.high);
    const double guess = rng.uniform(k_good.low, k_good.high);
    Piece piece = technique < 3 ? misconception_piece(technique, slip, guess, pull)
                                : option_piece(bit(technique), slip, guess);
    bank.items.push_back(plain_item(std::move(piece), number));
  }
  return bank;
}

Bank kaplan_bank(std::uint64_t seed, Quality quality) {
  Rng rng(seed);
  Bank bank{plain_model(5, 0, independent_prior(5, .5)), {}};
  for (Bits needs = 1; needs < 32; ++needs) {
    for (int copy = 0; copy < 20; ++copy) {
      const double slip = rng.uniform(quality.low, quality.high);
      const double guess = rng.uniform(quality.low, quality.high);
      bank.items.push_back(plain_item(right_wrong_piece(needs, slip, guess), 0));
    }
  }
  return bank;
}

PriorCheck reference_prior_check() {
  PriorCheck check;
  for (int k = 0; k < k_techniques; ++k) {
    double base = 0;
    for (const Ability& ability : abilities()) {
      const double p = rate(k, ability.value);
      base += ability.share * p;
      check.known_ability += ability.share * (p > .5 ? p : 1 - p) / k_techniques;
    }
    check.base_rates += (base > .5 ? base : 1 - base) / k_techniques;
  }
  return check;
}

}  // namespace rehale::sim
