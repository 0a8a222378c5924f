#include "core/exchange/kept.h"

#include <algorithm>
#include <utility>

#include "core/exchange/envelope.h"

namespace rehale::exchange {

namespace {

constexpr std::string_view k_head = "rehale-kept 1";

}  // namespace

Result<Kept> read_kept(std::string_view text) {
  if (text.size() > k_most_kept_bytes)
    return fail("kept-too-long", "", "this is more than is ever kept; delete it");
  if (!text.starts_with(k_head))
    return fail("kept-rubbish", "", "expected what an earlier visit kept; delete it");
  Kept kept;
  for (const Found& found : find_codes(text.substr(k_head.size()))) {
    if (found.kind == Kind::care) {
      if (const auto state = read_care(found.code)) keep_care(kept, *state);
      else ++kept.unreadable;
    } else {
      auto result = read_result(found.code);
      if (result) keep_result(kept, {std::string(found.code), *std::move(result)});
      else ++kept.unreadable;
    }
  }
  return kept;
}

std::string write_kept(const Kept& kept) {
  std::string text = std::string(k_head) + '\n';
  for (const KeptResult& result : kept.results) text += result.code + '\n';
  for (const CareState& state : kept.care) {
    if (const auto code = write_care(state)) text += *code + '\n';
  }
  return text;
}

void keep_result(Kept& kept, KeptResult result) {
  const auto key = run_key(result.read);
  std::erase_if(kept.results, [key](const auto& old) { return run_key(old.read) == key; });
  // By day; on the same day in the order in which they came.
  const auto later = std::ranges::find_if(kept.results, [&result](const auto& old) {
    return old.read.head.day > result.read.head.day;
  });
  kept.results.insert(later, std::move(result));
  if (kept.results.size() > k_most_kept_results) kept.results.erase(kept.results.begin());
}

void keep_care(Kept& kept, const CareState& state) {
  std::erase_if(kept.care, [&state](const auto& old) { return old.family == state.family; });
  kept.care.push_back(state);
  if (kept.care.size() > k_most_kept_care) kept.care.erase(kept.care.begin());
}

const CareState* care_of(const Kept& kept, const catalog::Id& family) {
  const auto found = std::ranges::find(kept.care, family, &CareState::family);
  return found == kept.care.end() ? nullptr : &*found;
}

}  // namespace rehale::exchange
