// Reading is in result_read.cpp.
#include "core/exchange/result_code.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/catalog/lookup.h"
#include "core/exchange/answer_pack.h"
#include "core/exchange/content_name.h"
#include "core/exchange/envelope.h"
#include "core/exchange/fields.h"

namespace rehale::exchange {

namespace {

using catalog::Family;
using check::Event;
using check::What;

double tenths(double at_ms) { return std::round(at_ms / 100); }

std::uint64_t flags_of(const ResultHead& head) {
  const int confidence = head.confidence ? std::clamp(*head.confidence, 0, 4) + 1 : 0;
  return (head.helped ? 1U : 0U) | (head.again ? 2U : 0U) | (head.made_up ? 4U : 0U) |
         (static_cast<unsigned>(confidence) << 3U);
}

template <class Item>
Bytes bits_of(const std::vector<catalog::Id>& ids, const std::vector<Item>& among) {
  Bytes bits;
  for (const auto& id : ids) {
    const int index = catalog::index_of(among, id);
    if (index < 0) continue;  // a question since withdrawn: no matter
    const auto place = static_cast<std::size_t>(index);
    if (bits.size() <= place / 8) bits.resize(place / 8 + 1);
    bits[place / 8] = static_cast<std::uint8_t>(bits[place / 8] | (1U << (place % 8)));
  }
  return bits;
}

// Follows the log and writes the list of answers.
class Writer {
 public:
  Writer(const Family& family, double begun_ms) : family_(family), last_(tenths(begun_ms)) {}

  Result<void> add(const Event& event) {
    const int question = catalog::index_of(family_.questions, event.question);
    if (question < 0) {
      return fail("unknown-question", event.question, "this family has no question of that name");
    }
    if (event.what == What::shown || event.what == What::retry_shown) return show(event, question);
    if (event.what == What::answered || event.what == What::retry_answered) {
      return answer(event, question);
    }
    return fail("log-shape", event.question, "a code cannot carry an event of this kind");
  }

  Json take() {
    if (open_ >= 0) list_.push_back(nullptr);
    return std::move(list_);
  }

 private:
  Result<void> show(const Event& event, int question) {
    if (++shown_ > k_max_code_questions) {
      return fail("code-too-long", event.question, "more questions than one code carries");
    }
    if (open_ >= 0) list_.push_back(nullptr);
    open_ = question;
    practice_ = event.what == What::retry_shown;
    list_.push_back(practice_ ? -1 - question : question);
    return time(event);
  }

  Result<void> answer(const Event& event, int question) {
    if (question != open_ || practice_ != (event.what == What::retry_answered)) {
      return fail("log-shape", event.question, "an answer to a question that is not on show");
    }
    open_ = -1;
    auto timed = time(event);
    if (!timed) return timed;
    const auto packed =
        pack_answer(family_.questions[static_cast<std::size_t>(question)], event.answer);
    if (!packed) return tl::unexpected(packed.error());
    if (packed->whole) list_.push_back(static_cast<std::int64_t>(packed->value));
    else list_.push_back(packed->value);
    return {};
  }

  Result<void> time(const Event& event) {
    const double now = tenths(event.at_ms);
    if (!(now >= last_) || now > k_most_tenths) {
      return fail("log-shape", event.question, "times run forward, within 30 days");
    }
    list_.push_back(static_cast<std::int64_t>(now - last_));
    last_ = now;
    return {};
  }

  static constexpr double k_most_tenths = 30.0 * 24 * 3600 * 10;
  const Family& family_;
  double last_;
  std::size_t shown_ = 0;
  int open_ = -1;
  bool practice_ = false;
  Json list_ = Json::array();
};

}  // namespace

Result<PackedResult> pack_result(const ResultHead& head, const check::Log& log,
                                 const Family& family) {
  if (log.empty() || log.front().what != What::begin || log.front().family != family.id) {
    return fail("log-empty", "event 0", "expected the log of a run of " + family.id);
  }
  const Event& begin = log.front();
  if (!is_name(head.page) || head.page.size() > 24 || !is_name(begin.language) ||
      begin.content.empty() || begin.content.size() > 32 || !is_name(begin.content) ||
      begin.language.size() > 24 || head.day < k_first_day || head.day > k_last_day) {
    return fail("log-shape", "event 0", "expected short names and a day from 1970 on");
  }
  Writer writer(family, begin.at_ms);
  for (std::size_t n = 1; n < log.size(); ++n) {
    const auto added = writer.add(log[n]);
    if (!added) {
      Error error = added.error();
      error.where = "event " + std::to_string(n) + ", " + error.where;
      return tl::unexpected(std::move(error));
    }
  }
  Json list = Json::array({begin.family, content_json(begin.content), head.page, begin.language,
                           flags_of(head), nullptr, head.day, nullptr, begin.seed,
                           Json::binary(bits_of(begin.recent, family.questions))});
  if (head.assignment) list[5] = Json::binary({head.assignment->begin(), head.assignment->end()});
  if (head.person) list[7] = *head.person;
  const bool is_set = begin.questions != 0 || !begin.focus.empty();
  if (is_set) {
    list.push_back(begin.questions);
    list.push_back(Json::binary(bits_of(begin.focus, family.techniques)));
  }
  list.push_back(writer.take());
  return PackedResult{is_set ? 2 : 1, write_cbor(list)};
}

Result<std::string> write_result(const ResultHead& head, const check::Log& log,
                                 const Family& family) {
  auto packed = pack_result(head, log, family);
  if (!packed) return tl::unexpected(packed.error());
  return write_envelope(Kind::result, packed->version, std::move(packed->payload));
}

}  // namespace rehale::exchange
