// What a person's own device keeps for them if they agreed: codes of results and of what they told
// of their inhalers, one a line behind a head. Must not know where it is kept, clocks, content.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/care_code.h"
#include "core/exchange/result_code.h"

namespace rehale::exchange {

inline constexpr std::size_t k_most_kept_results = 40, k_most_kept_care = 12;
inline constexpr std::size_t k_most_kept_bytes = std::size_t{200} * 1024;

struct KeptResult {
  std::string code;
  ReadResult read;
};

struct Kept {
  std::vector<KeptResult> results;  // oldest first, a run once
  std::vector<CareState> care;      // one a family
  int unreadable = 0;               // codes there that are broken or of a newer page: left out
};

// Any text; what cannot be read is counted. Errors: "kept-too-long", "kept-rubbish" (no such head:
// nothing of ours).
[[nodiscard]] Result<Kept> read_kept(std::string_view text);
[[nodiscard]] std::string write_kept(const Kept& kept);

// Of copies of one run the newest stays; of too many the oldest go.
void keep_result(Kept& kept, KeptResult result);
void keep_care(Kept& kept, const CareState& state);
// nullptr: nothing told of that family.
[[nodiscard]] const CareState* care_of(const Kept& kept, const catalog::Id& family);

}  // namespace rehale::exchange
