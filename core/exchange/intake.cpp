#include "core/exchange/intake.h"

#include <algorithm>
#include <utility>

#include "core/exchange/envelope.h"
#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"

namespace rehale::exchange {

namespace {

constexpr std::size_t k_start_letters = 12;

bool is_blank(std::string_view line) {
  return std::ranges::all_of(line, [](char c) { return c == ' ' || c == '\t' || c == '\r'; });
}

// Lines with words in them, of which `with_code` (sorted, counted from 1) hold a code.
std::size_t count_without(std::string_view text, const std::vector<std::size_t>& with_code) {
  std::size_t count = 0;
  for (std::size_t line = 1; !text.empty(); ++line) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const bool has_code = std::ranges::binary_search(with_code, line);
    if (!has_code && !is_blank(text.substr(0, end))) ++count;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return count;
}

// The first letters; none of them cut in two (UTF-8).
std::string_view start_of(std::string_view code) {
  if (code.size() <= k_start_letters) return code;
  std::size_t end = k_start_letters;
  while (end > 0 && (static_cast<unsigned char>(code[end]) & 0xC0U) == 0x80U) --end;
  return code.substr(0, end);
}

cohort::Tags tags_of(const ReadResult& result) {
  const ResultHead& head = result.head;
  return {.key = run_key(result),
          .again = head.again,
          .helped = head.helped,
          .made_up = head.made_up,
          .day = head.day,
          .person = head.person};
}

}  // namespace

void Intake::open(Courses courses) {
  *this = {};
  courses_ = std::move(courses);
}

std::shared_ptr<const check::Course> Intake::course(std::string_view family) const {
  const auto found = std::ranges::find_if(
      courses_, [family](const auto& course) { return course->family.id == family; });
  return found == courses_.end() ? nullptr : *found;
}

void Intake::add_text(const Place& place, std::string_view text) {
  std::vector<std::size_t> with_code;
  for (const Found& found : find_codes(text)) {
    with_code.push_back(found.line);
    const Place here{place.source, place.line + found.line - 1, place.scanned};
    if (found.kind == Kind::sealed) {
      add_sealed(here, found.code);
      continue;
    }
    const auto result = read_result(found.code);
    if (!result) {
      add_unread(here, found.code, result.error());
      continue;
    }
    if (auto added = add_result(*result, std::string(found.code)); !added) {
      add_unread(here, found.code, std::move(added.error()));
    }
  }
  lines_without_ += count_without(text, with_code);
}

void Intake::add_scanned(const std::string& source, std::string_view texts) {
  for (std::size_t code = 1; !texts.empty(); ++code) {
    const std::size_t end = std::min(texts.find('\n'), texts.size());
    const std::string_view text = texts.substr(0, end);
    const Place place{source, code, true};
    if (find_codes(text).empty()) {
      add_unread(place, text, {"code-foreign", "", "a QR code of something else"});
    } else {
      add_text(place, text);
    }
    texts.remove_prefix(std::min(end + 1, texts.size()));
  }
}

void Intake::add_run_file(const Place& place, std::string_view text) {
  const Place whole{place.source, 0};
  const auto log = read_log(text);
  if (!log) return add_unread(whole, {}, log.error());
  const auto found = log->empty() ? nullptr : course(log->front().family);
  if (!found || found->content != log->front().content) {
    return add_unread(whole, {}, {"content-other", "", "this run was made with other questions"});
  }
  ResultHead head;
  head.again = !log->front().recent.empty();
  const auto code = write_result(head, *log, found->family);
  if (!code) return add_unread(whole, {}, code.error());
  const auto result = read_result(*code);
  if (!result) return add_unread(whole, {}, result.error());
  if (auto added = add_result(*result, *code); !added) {
    add_unread(whole, {}, std::move(added.error()));
  }
}

Result<void> Intake::add_result(const ReadResult& result, std::string code) {
  const auto found = course(result.begin.family);
  if (!found) return fail("content-other", "", "this page has no questions of that kind");
  const auto log = log_of(result, found->family, found->content);
  if (!log) return tl::unexpected(log.error());
  auto record = cohort::record_of(*found, *log, tags_of(result));
  if (!record) return tl::unexpected(record.error());
  if (code.empty()) {
    auto written = write_result(result.head, *log, found->family);
    if (!written) return tl::unexpected(written.error());
    code = *std::move(written);
  }
  keep(*std::move(record), std::move(code));
  return {};
}

void Intake::add_sealed(const Place& place, std::string_view code) {
  const auto sealed = read_sealed(code);
  if (!sealed) return add_unread(place, code, sealed.error());
  keep_sealed({place, std::string(code)});
}

void Intake::keep_sealed(SealedFound found) {
  ++sealed_count_;
  if (sealed_.size() < k_listed_sealed) sealed_.push_back(std::move(found));
}

std::vector<SealedFound> Intake::take_sealed() {
  sealed_count_ -= sealed_.size();
  return std::exchange(sealed_, {});
}

void Intake::add_opened(SealedFound found, std::span<const std::uint8_t> opened) {
  if (opened.empty()) return keep_sealed(std::move(found));
  const auto sealed = read_sealed(found.code);
  const auto result = sealed ? read_opened(*sealed, opened) : tl::unexpected(sealed.error());
  if (!result) return add_unread(found.place, found.code, result.error());
  if (auto added = add_result(*result); !added) {
    add_unread(found.place, found.code, std::move(added.error()));
  }
}

void Intake::add_unread(const Place& place, std::string_view code, Error error) {
  ++unread_count_;
  if (unread_.size() >= k_listed_unread) return;
  unread_.push_back({place, std::string(start_of(code)), std::move(error)});
}

// As cohort::drop_copies: the copy with most answers stays, the first of equals.
void Intake::keep(cohort::Record record, std::string code) {
  const auto [at, is_new] = by_key_.try_emplace(record.key, records_.size());
  if (is_new) {
    records_.push_back(std::move(record));
    codes_.push_back(std::move(code));
    return;
  }
  ++copies_;
  if (record.items.size() <= records_[at->second].items.size()) return;
  records_[at->second] = std::move(record);
  codes_[at->second] = std::move(code);
}

}  // namespace rehale::exchange
