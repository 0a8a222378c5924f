#include <algorithm>
#include <bit>
#include <utility>

#include "core/base/hash.h"
#include "core/check/plan.h"
#include "core/exchange/answer_pack.h"
#include "core/exchange/content_name.h"
#include "core/exchange/envelope.h"
#include "core/exchange/fields.h"
#include "core/exchange/result_code.h"

namespace rehale::exchange {

namespace {

using catalog::Family;
using check::Event;
using check::What;
using Form = Entry::Form;

constexpr std::size_t k_v1_fields = 11, k_v2_fields = 13;

void read_flags(Fields& fields, ResultHead& head) {
  const auto flags = static_cast<unsigned>(fields.whole("flags", 0, 47));
  head.helped = (flags & 1U) != 0;
  head.again = (flags & 2U) != 0;
  head.made_up = (flags & 4U) != 0;
  if (flags >= 8) head.confidence = static_cast<int>(flags >> 3U) - 1;
}

void read_entries(Fields& fields, std::vector<Entry>& entries) {
  const Json* list = fields.list("answers", 4 * k_max_code_questions);
  if (list == nullptr) return;
  for (const Json& json : *list) {
    if (json.is_null()) entries.push_back({Form::nothing});
    else if (is_whole(json)) entries.push_back({Form::whole, json.get<double>()});
    else if (json.is_number_float()) entries.push_back({Form::fraction, json.get<double>()});
    else fields.refuse("answers", "numbers");
  }
}

Result<ReadResult> read_list(const Json& json, int version) {
  ReadResult result{.version = version};
  Fields fields(json, version == 1 ? k_v1_fields : k_v2_fields);
  result.begin.family = fields.name("family", 64);
  result.begin.content = read_content_name(fields);
  result.head.page = fields.name("page", 24, true);
  result.begin.language = fields.name("language", 24, true);
  read_flags(fields, result.head);
  if (!fields.skip_null()) {
    const Bytes id = fields.bytes("assignment", 16, 16);
    if (id.size() == 16) std::ranges::copy(id, result.head.assignment.emplace().begin());
  }
  result.head.day = static_cast<Day>(fields.whole("day", k_first_day, k_last_day));
  if (!fields.skip_null()) {
    result.head.person = static_cast<std::uint32_t>(fields.whole("person", 0, 4294967295.0));
  }
  result.begin.seed = fields.word("seed");
  result.recent = fields.bytes("recent", 0, 32);
  if (version > 1) {
    result.begin.questions = static_cast<int>(fields.whole("questions", 0, check::k_most_set));
    result.focus = fields.bytes("focus", 0, 4);
  }
  read_entries(fields, result.entries);
  const auto done = fields.done();
  if (!done) return tl::unexpected(done.error());
  return result;
}

template <class Item>
std::vector<catalog::Id> ids_of(const Bytes& bits, const std::vector<Item>& among) {
  std::vector<catalog::Id> ids;
  for (std::size_t n = 0; n < among.size() && n / 8 < bits.size(); ++n) {
    if (((bits[n / 8] >> (n % 8)) & 1) != 0) ids.push_back(among[n].id);
  }
  return ids;
}

// The list of answers as events again.
class Player {
 public:
  Player(const std::vector<Entry>& entries, const Family& family, check::Log& log)
      : entries_(entries), family_(family), log_(log) {}

  Result<void> all() {
    while (at_ < entries_.size()) {
      auto played = one();
      if (!played) return played;
    }
    return {};
  }

 private:
  Result<void> one() {
    const Entry& asked = entries_[at_++];
    const bool practice = asked.value < 0;
    const double index = practice ? -1 - asked.value : asked.value;
    if (asked.form != Form::whole || index >= static_cast<double>(family_.questions.size())) {
      return trouble("expected a question of this family");
    }
    const auto& question = family_.questions[static_cast<std::size_t>(index)];
    Event shown{.what = practice ? What::retry_shown : What::shown, .question = question.id};
    if (!time(shown)) return trouble("expected a time");
    log_.push_back(shown);
    if (at_ < entries_.size() && entries_[at_].form == Form::nothing) {
      ++at_;
      return {};
    }
    Event answered{.what = practice ? What::retry_answered : What::answered,
                   .question = question.id};
    if (!time(answered) || at_ >= entries_.size() || entries_[at_].form == Form::nothing) {
      return trouble("expected a time and an answer");
    }
    const Entry& given = entries_[at_++];
    auto answer = unpack_answer(question, {given.value, given.form == Form::whole});
    if (!answer) return tl::unexpected(answer.error());
    answered.answer = *std::move(answer);
    log_.push_back(std::move(answered));
    return {};
  }

  bool time(Event& event) {
    if (at_ >= entries_.size()) return false;
    const Entry& entry = entries_[at_++];
    if (entry.form != Form::whole || entry.value < 0 || entry.value > 3e7) return false;
    now_ += entry.value;
    event.at_ms = now_ * 100;
    return true;
  }

  [[nodiscard]] tl::unexpected<Error> trouble(const char* wanted) const {
    return fail("code-shape", "answers, entry " + std::to_string(at_), wanted);
  }

  const std::vector<Entry>& entries_;
  const Family& family_;
  check::Log& log_;
  std::size_t at_ = 0;
  double now_ = 0;
};

}  // namespace

Result<ReadResult> unpack_result(int version, std::span<const std::uint8_t> payload) {
  const auto json = read_cbor(payload);
  if (!json) return tl::unexpected(json.error());
  if (version >= 1 && version <= k_result_version) return read_list(*json, version);
  return fail("code-newer", "letter 2", "a newer page wrote this code; load the page anew");
}

Result<ReadResult> read_result(std::string_view code) {
  const auto envelope = read_envelope(code, Kind::result, k_result_version);
  if (!envelope) return tl::unexpected(envelope.error());
  return unpack_result(envelope->version, envelope->payload);
}

Result<check::Log> log_of(const ReadResult& result, const Family& family,
                          std::string_view content) {
  if (result.begin.family != family.id || result.begin.content != content) {
    return fail("content-other", result.begin.family + ", content " + result.begin.content,
                "these answers were given to other questions than those at hand (" + family.id +
                    ", content " + std::string(content) +
                    "); open the code with the page of that time");
  }
  check::Log log{result.begin};
  log.front().recent = ids_of(result.recent, family.questions);
  log.front().focus = ids_of(result.focus, family.techniques);
  const auto played = Player(result.entries, family, log).all();
  if (!played) return tl::unexpected(played.error());
  return log;
}

std::uint64_t run_key(const ReadResult& result) {
  std::uint64_t key = fnv1a(result.begin.family + '/' + result.begin.content);
  const auto add = [&key](std::uint64_t value) {
    char bytes[8];
    for (unsigned n = 0; n < 8; ++n) bytes[n] = static_cast<char>(value >> (8 * n) & 255U);
    key = fnv1a({bytes, sizeof bytes}, key);
  };
  add(result.begin.seed);
  add(static_cast<std::uint64_t>(result.head.day));
  if (result.head.assignment) {
    for (const std::uint8_t byte : *result.head.assignment) add(byte);
  }
  // The first question with its times and answer: two people on one seed still differ.
  for (std::size_t n = 0; n < std::min<std::size_t>(4, result.entries.size()); ++n) {
    add(std::bit_cast<std::uint64_t>(result.entries[n].value));
  }
  return key;
}

}  // namespace rehale::exchange
