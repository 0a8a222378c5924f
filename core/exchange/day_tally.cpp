#include "core/exchange/day_tally.h"

#include <algorithm>
#include <charconv>

#include "core/cohort/tables.h"

namespace rehale::exchange {

namespace {

constexpr std::size_t k_most_families = 16, k_most_steps = 64, k_most_id = 40;

tl::unexpected<Error> bad(const std::string& where) {
  return fail("tally-shape", where, "expected what this device counted today; it counts anew");
}

// Words parted by single spaces; a semicolon ends one.
class Words {
 public:
  explicit Words(std::string_view text) : rest_(text) {}
  [[nodiscard]] bool done() const { return rest_.empty(); }
  std::string_view take() {
    const std::size_t end = std::min(rest_.find_first_of(" ;"), rest_.size());
    const std::string_view word = rest_.substr(0, end);
    rest_.remove_prefix(end);
    if (rest_.starts_with(' ')) rest_.remove_prefix(1);
    return word;
  }
  // Between families: "; ".
  bool take_end() {
    if (!rest_.starts_with("; ")) return false;
    rest_.remove_prefix(2);
    return true;
  }
  [[nodiscard]] bool at_end() const { return rest_.empty() || rest_.front() == ';'; }

 private:
  std::string_view rest_;
};

std::optional<std::int64_t> number(std::string_view word, std::int64_t most) {
  std::int64_t value = 0;
  const auto [end, code] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (code != std::errc() || end != word.data() + word.size()) return std::nullopt;
  if (value < 0 || value > most) return std::nullopt;
  return value;
}

bool is_id(std::string_view word) {
  const auto fits = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  };
  return !word.empty() && word.size() <= k_most_id && std::ranges::all_of(word, fits);
}

Result<DayTally::Family> read_family(Words& words) {
  DayTally::Family family;
  const std::string_view id = words.take();
  const auto checks = number(words.take(), k_most_tally);
  if (!is_id(id) || !checks) return bad(std::string(id));
  family = {catalog::Id(id), *checks, {}};
  while (!words.at_end()) {
    const std::string_view step = words.take();
    const auto count = number(words.take(), *checks);
    if (!is_id(step) || !count || family.steps.size() == k_most_steps) return bad(std::string(id));
    family.steps.push_back({catalog::Id(step), *count});
  }
  return family;
}

}  // namespace

void count_check(DayTally& tally, Day today, const cohort::Record& record,
                 const catalog::Family& family) {
  if (tally.day != today) tally = {.day = today, .families = {}};
  auto found = std::ranges::find(tally.families, record.family, &DayTally::Family::id);
  if (found == tally.families.end())
    found = tally.families.insert(found, {.id = record.family, .checks = 0, .steps = {}});
  if (found->checks >= k_most_tally) return;
  ++found->checks;
  for (std::size_t k = 0; k < record.techniques.size(); ++k) {
    if (record.techniques[k].told != cohort::Told::not_yet) continue;
    const catalog::Id& id = family.techniques[k].id;
    auto step = std::ranges::find(found->steps, id, &DayTally::Step::technique);
    if (step == found->steps.end()) step = found->steps.insert(step, {id, 0});
    ++step->not_yet;
  }
}

std::optional<std::int64_t> shown_count(std::int64_t count) {
  return count < cohort::k_least_cell ? std::nullopt : std::optional(count);
}

std::int64_t not_yet(const DayTally::Family& family, const catalog::Id& technique) {
  const auto found = std::ranges::find(family.steps, technique, &DayTally::Step::technique);
  return found == family.steps.end() ? 0 : found->not_yet;
}

std::string write_tally(const DayTally& tally) {
  std::string text = "1 " + std::to_string(tally.day);
  const char* between = " ";
  for (const DayTally::Family& family : tally.families) {
    text += between + family.id + ' ' + std::to_string(family.checks);
    for (const DayTally::Step& step : family.steps)
      text += ' ' + step.technique + ' ' + std::to_string(step.not_yet);
    between = "; ";
  }
  return text;
}

Result<DayTally> read_tally(std::string_view text) {
  if (text.size() > k_most_tally_bytes)
    return fail("tally-too-long", "", "this is more than is ever counted; it counts anew");
  Words words(text);
  if (words.take() != "1") return bad("version");
  const auto day = number(words.take(), k_last_day);
  if (!day) return bad("day");
  DayTally tally{.day = static_cast<Day>(*day), .families = {}};
  while (!words.done()) {
    auto family = read_family(words);
    if (!family) return tl::unexpected(family.error());
    if (tally.families.size() == k_most_families) return bad("families");
    tally.families.push_back(*std::move(family));
    if (!words.done() && (!words.take_end() || words.done())) return bad(tally.families.back().id);
  }
  return tally;
}

}  // namespace rehale::exchange
