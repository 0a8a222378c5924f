// One answer as one number and back, by the question it was given to. Internal to core/exchange.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/catalog/model.h"
#include "core/check/events.h"

namespace rehale::exchange {

// A whole number or a fraction.
struct Packed {
  double value = 0;
  bool whole = true;
};

inline constexpr double k_packed_unsure = -1;
// Larger whole numbers do not fit a double: at most 18 cards (18! < 2^53), 52 ticks.
inline constexpr std::size_t k_most_cards = 18, k_most_ticks = 52;

// Errors: "answer-shape" naming the question.
[[nodiscard]] Result<Packed> pack_answer(const catalog::Question& question,
                                         const check::Answer& answer);
// Errors: "code-shape" naming the question.
[[nodiscard]] Result<check::Answer> unpack_answer(const catalog::Question& question, Packed packed);

}  // namespace rehale::exchange
