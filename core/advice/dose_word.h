// The dose model's word on a habit: which puff of core/dose a family and a habit of its content
// stand for, and how much of a good puff's lung dose that leaves, in words' ids. A teaching
// estimate. Must not know texts, screens.
#pragma once

#include <optional>
#include <string_view>

#include "core/catalog/model.h"
#include "core/dose/model.h"

namespace rehale::advice {

// A well-taken puff with the family's device; nothing: no model for it.
[[nodiscard]] std::optional<dose::Technique> good_puff(const catalog::Family& family);

// The good puff with those habits (ids of techniques that are lacking and misconceptions that are
// held); nothing: the model has no answer for any of them.
[[nodiscard]] std::optional<dose::Technique> puff_with(const catalog::Family& family,
                                                       const std::vector<catalog::Id>& habits);

// A share of a good puff's lung dose as a word: "none" (below 3 %), "small" (below 20 %), "third"
// (to 42 %), "half" (to 58 %), "two-thirds" (to 71 %), "three-quarters" (to 84 %), "little-less"
// (to 96 %), "same". Limits lie half-way between the words (a choice).
[[nodiscard]] std::string_view share_word(double share);

// share_word of what the habit leaves. Nothing: the model has no answer, or only an invented factor
// (breath into a powder, covered vents: no publication has a number), which is no word for advice.
struct DoseWord {
  std::string_view likely, low, high;
  bool assumed = false;  // logic, no measurement behind it: a dose lost by loading twice
};
[[nodiscard]] std::optional<DoseWord> dose_word(const catalog::Family& family,
                                                const catalog::Id& habit);

}  // namespace rehale::advice
