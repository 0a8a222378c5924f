#include "web/screens/desk_state.h"

#include <algorithm>
#include <charconv>
#include <set>
#include <span>
#include <utility>

#include "core/exchange/sealed_code.h"

namespace rehale::screens {

namespace {

constexpr std::size_t k_part = 4000;  // records added up in one frame
constexpr std::size_t k_most_source = 120;
constexpr std::size_t k_seals = 25;  // opened in one go: some 0.1 s

struct Head {
  std::string_view kind, source;
  int permille = 0;
  std::size_t line = 1;
};

std::string_view next_word(std::string_view& words) {
  const std::size_t end = std::min(words.find(' '), words.size());
  const std::string_view word = words.substr(0, end);
  words.remove_prefix(std::min(end + 1, words.size()));
  return word;
}

template <class Number>
Number number_of(std::string_view word) {
  Number number = 0;
  std::from_chars(word.data(), word.data() + word.size(), number);
  return number;
}

// Why a file gave nothing to read, by the kind of its chunk; nullptr: it did.
const Error* trouble_of(std::string_view kind) {
  static const std::pair<std::string_view, Error> k_troubles[] = {
      {"long", {"file-too-long", "", "no result is that long"}},
      {"no-code", {"picture-empty", "", "no QR code was found in it"}},
      {"large", {"picture-large", "", "it has more bytes or pixels than are read"}},
      {"no-picture", {"picture-shape", "", "it cannot be opened as PNG or JPEG"}},
      {"no-reader", {"picture-reader", "", "what reads QR codes did not arrive"}}};
  for (const auto& [name, trouble] : k_troubles) {
    if (name == kind) return &trouble;
  }
  return nullptr;
}

Head read_head(std::string_view line) {
  Head head;
  head.kind = next_word(line);
  head.permille = std::clamp(number_of<int>(next_word(line)), 0, 1000);
  head.line = number_of<std::size_t>(next_word(line));
  head.source = line.substr(0, k_most_source);
  return head;
}

}  // namespace

void Desk::begin_reading(exchange::Intake::Courses courses) {
  if (!intake.is_open()) intake.open(std::move(courses));
  work_ = Work::reading;
  permille_ = 0;
  not_opened_ = 0;
  told.clear();
}

bool Desk::take(std::string_view chunk) {
  const std::size_t end = std::min(chunk.find('\n'), chunk.size());
  const Head head = read_head(chunk.substr(0, end));
  const std::string_view text = chunk.substr(std::min(end + 1, chunk.size()));
  const exchange::Place place{std::string(head.source), head.line};
  permille_ = head.permille;
  if (head.kind != "end" && intake.records().size() >= most_results) {
    intake.add_unread({place.source, 0}, {},
                      {"heap-full", "", "so many results are read at a time"});
    return false;
  }
  if (head.kind == "text") {
    intake.add_text(place, text);
  } else if (head.kind == "run") {
    intake.add_run_file(place, text);
  } else if (head.kind == "codes") {
    intake.add_scanned(place.source, text);
  } else if (const Error* trouble = trouble_of(head.kind)) {
    intake.add_unread({place.source, 0}, {}, *trouble);
  } else {
    return false;
  }
  return true;
}

void Desk::begin_opening() {
  work_ = Work::opening;
  opening_ = intake.take_sealed();
  permille_ = 0;
  opened_ = not_opened_ = 0;
  told.clear();
}

std::string Desk::lines_to_open() {
  std::string lines;
  for (std::size_t n = opened_; n < std::min(opened_ + k_seals, opening_.size()); ++n) {
    const auto sealed = exchange::read_sealed(opening_[n].code);
    if (n > opened_) lines += '\n';
    if (sealed) lines += exchange::line_to_open(*sealed);
  }
  return lines;
}

void Desk::take_opened(std::string_view lines) {
  const std::size_t end = std::min(opened_ + k_seals, opening_.size());
  for (; opened_ < end; ++opened_) {
    const std::size_t line = std::min(lines.find('\n'), lines.size());
    const auto bytes = exchange::from_base64url(lines.substr(0, line)).value_or(exchange::Bytes());
    if (bytes.empty()) ++not_opened_;
    intake.add_opened(std::move(opening_[opened_]), bytes);
    lines.remove_prefix(std::min(line + 1, lines.size()));
  }
  permille_ = static_cast<int>(1000 * opened_ / opening_.size());
}

void Desk::end_reading() {
  for (; opened_ < opening_.size(); ++opened_) intake.add_opened(std::move(opening_[opened_]), {});
  opening_.clear();
  opened_ = 0;
  ++heap_;
  work_ = Work::adding;
  added_ = 0;
  ordering_ = 0;
  summary_ = {};
}

bool Desk::add_up() {
  if (work_ != Work::adding) return false;
  while (add_step()) {
    if (intake.records().size() > k_part) return true;
  }
  work_ = Work::none;
  return false;
}

// Each takes a large group some ten milliseconds.
bool Desk::add_step() {
  const std::span<const cohort::Record> all = intake.records();
  if (const std::size_t count = std::min(k_part, all.size() - added_); count > 0) {
    summary_ = cohort::sum(summary_, cohort::summarise(all.subspan(added_, count)));
    added_ += count;
    return true;
  }
  switch (ordering_++) {
    case 0:
      list_families();
      return true;
    case 1:
      list_newest();
      return true;
    default:
      filter_changed();
      return false;
  }
}

void Desk::clear() {
  const int heap = heap_;
  *this = {};
  heap_ = heap + 1;
}

// Also whom to see first, which goes by the families' critical techniques.
void Desk::list_families() {
  std::set<catalog::Id> families, languages;
  std::vector<cohort::Critical> critical;
  for (const cohort::Slice& slice : summary_.slices) {
    languages.insert(slice.language);
    if (!families.insert(slice.family).second) continue;
    cohort::Critical mask{slice.family};
    const auto course = intake.course(slice.family);
    for (std::size_t k = 0; k < course->family.techniques.size(); ++k) {
      if (course->family.techniques[k].critical) mask.techniques |= 1U << k;
    }
    critical.push_back(std::move(mask));
  }
  families_.assign(families.begin(), families.end());
  languages_.assign(languages.begin(), languages.end());
  if (!families.contains(filter.family)) {
    first.clear();
    filter.family = families_.empty() ? catalog::Id() : families_.front();
  }
  see_first_.clear();
  for (const auto& row : cohort::see_first(intake.records(), critical))
    see_first_.push_back(row.record);
}

void Desk::list_newest() {
  std::vector<std::pair<Day, std::size_t>> by_age;
  by_age.reserve(intake.records().size());
  for (const auto& record : intake.records()) by_age.emplace_back(-record.day, by_age.size());
  std::ranges::sort(by_age);
  newest_.clear();
  for (const auto& [age, record] : by_age) newest_.push_back(record);
}

bool Desk::lets_through(const cohort::Record& record) const {
  return (all_families || record.family == filter.family) &&
         (!filter.language || record.language == *filter.language) &&
         (!filter.again || record.again == *filter.again);
}

void Desk::filter_changed() {
  page = 0;
  people_.clear();
  for (const std::size_t n : sort == DeskSort::newest ? newest_ : see_first_) {
    if (lets_through(intake.records()[n])) people_.push_back(n);
  }
}

void Desk::show_family(const catalog::Id& family) {
  if (family != filter.family) first.clear();
  filter.family = family;
  filter_changed();
}

std::optional<std::size_t> Desk::before(std::size_t record) const {
  const auto& all = intake.records();
  const cohort::Record& now = all[record];
  std::optional<std::size_t> found;
  if (!now.person) return found;
  for (std::size_t n = 0; n < all.size(); ++n) {
    const cohort::Record& other = all[n];
    if (n == record || other.person != now.person || other.family != now.family) continue;
    if (std::pair(other.day, n) > std::pair(now.day, record)) continue;
    if (!found || std::pair(other.day, n) > std::pair(all[*found].day, *found)) found = n;
  }
  return found;
}

std::vector<cohort::TeachRow> Desk::teach_rows(const cohort::TechniqueTable& table) const {
  std::vector<cohort::TeachWeight> weights;
  if (const auto course = intake.course(filter.family)) {
    for (const auto& technique : course->family.techniques) {
      weights.push_back({technique.critical, technique.weight});
    }
  }
  auto rows = cohort::teach_first(table, weights);
  cohort::put_first(rows, first);
  return rows;
}

}  // namespace rehale::screens
