// A small seeded generator (splitmix64): same seed, same numbers, on every compiler.
// Must not know: clocks, random devices; whoever wants chance brings a seed.
// Rule: Steele, Lea, Flood 2014 (the public-domain mixing constants of splitmix64).
#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>

namespace rehale {

class Rng {
 public:
  explicit constexpr Rng(std::uint64_t seed) : state_(seed) {}

  // All 64 bits, any value.
  constexpr std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebULL;
    return mixed ^ (mixed >> 31U);
  }

  // [0, 1), a multiple of 2^-53.
  constexpr double uniform() { return static_cast<double>(next() >> 11U) * 0x1p-53; }

  // [low, high).
  constexpr double uniform(double low, double high) { return low + (high - low) * uniform(); }

  // 0 … count-1, every value equally often; 0 when count is 0.
  constexpr std::uint64_t below(std::uint64_t count) {
    if (count == 0) return 0;
    const std::uint64_t uneven = (0 - count) % count;  // 2^64 mod count: draws to throw back
    std::uint64_t draw = next();
    while (draw < uneven) draw = next();
    return draw % count;
  }

 private:
  std::uint64_t state_;
};

// The usual shuffle from the back: every order equally likely. List: size() and operator[].
template <class List>
constexpr void shuffle(List& list, Rng& rng) {
  for (std::size_t left = list.size(); left > 1; --left) {
    std::swap(list[left - 1], list[static_cast<std::size_t>(rng.below(left))]);
  }
}

}  // namespace rehale
