#include "core/exchange/assignment_code.h"

#include <algorithm>
#include <utility>

#include "core/catalog/lookup.h"
#include "core/exchange/envelope.h"
#include "core/exchange/fields.h"

namespace rehale::exchange {

namespace {

constexpr std::size_t k_longest_id = 48;

bool is_day(Day day) { return day >= k_first_day && day <= k_last_day; }

bool are_ids(const std::vector<catalog::Id>& ids, std::size_t most) {
  if (ids.size() > most) return false;
  return std::ranges::all_of(ids, [&ids](const auto& id) {
    return !id.empty() && id.size() <= k_longest_id && is_name(id) &&
           std::ranges::count(ids, id) == 1;
  });
}

Result<void> check_shape(const Assignment& set) {
  const auto trouble = [](const char* field, const char* wanted) {
    return fail("assignment-shape", field, wanted);
  };
  if (set.families.empty() || !are_ids(set.families, k_most_families)) {
    return trouble("families", "pick at least one family, each once");
  }
  if (!are_ids(set.focus, k_most_focus)) return trouble("focus", "at most 16 habits, each once");
  if (set.questions != 0 && (set.questions < k_fewest_asked || set.questions > k_most_asked)) {
    return trouble("questions", "pick 6 to 12 questions, or leave the number open");
  }
  if (set.language.size() > 24 || !is_name(set.language)) {
    return trouble("language", "expected a language such as en");
  }
  if (set.due && !is_day(*set.due)) return trouble("due", "expected a day from 1970 on");
  if (set.expires && !is_day(*set.expires))
    return trouble("expires", "expected a day from 1970 on");
  if (set.due && set.expires && *set.expires < *set.due) {
    return trouble("expires", "the link must not end before the day it is due");
  }
  if (set.key && set.key->front() != 4) return trouble("key", "expected an uncompressed point");
  return {};
}

std::vector<catalog::Id> read_ids(Fields& fields, const char* what, std::size_t most) {
  std::vector<catalog::Id> ids;
  const Json* list = fields.list(what, most);
  if (list == nullptr) return ids;
  for (const Json& json : *list) {
    if (json.is_string()) ids.push_back(json.get<std::string>());
    else fields.refuse(what, "names");
  }
  return ids;
}

std::optional<Day> read_day(Fields& fields, const char* what) {
  if (fields.skip_null()) return {};
  return static_cast<Day>(fields.whole(what, k_first_day, k_last_day));
}

Result<Assignment> read_v1(const Json& json) {
  Assignment set;
  Fields fields(json, 8);
  set.families = read_ids(fields, "families", k_most_families);
  set.focus = read_ids(fields, "focus", k_most_focus);
  set.questions = static_cast<int>(fields.whole("questions", 0, k_most_asked));
  if (!fields.skip_null()) set.language = fields.name("language", 24);
  set.due = read_day(fields, "due");
  set.expires = read_day(fields, "expires");
  const Bytes id = fields.bytes("id", set.id.size(), set.id.size());
  Bytes key;
  if (!fields.skip_null()) key = fields.bytes("key", 65, 65);
  const auto done = fields.done();
  if (!done) return tl::unexpected(done.error());
  std::ranges::copy(id, set.id.begin());
  if (!key.empty()) std::ranges::copy(key, set.key.emplace().begin());
  return set;
}

Json day_json(const std::optional<Day>& day) { return day ? Json(*day) : Json(nullptr); }

}  // namespace

Result<std::string> write_assignment(const Assignment& set) {
  const auto shaped = check_shape(set);
  if (!shaped) return tl::unexpected(shaped.error());
  Json list =
      Json::array({Json(set.families), Json(set.focus), set.questions,
                   set.language.empty() ? Json(nullptr) : Json(set.language), day_json(set.due),
                   day_json(set.expires), Json::binary({set.id.begin(), set.id.end()}), nullptr});
  if (set.key) list[7] = Json::binary({set.key->begin(), set.key->end()});
  return write_envelope(Kind::assignment, k_assignment_version, write_cbor(list));
}

Result<Assignment> read_assignment(std::string_view code) {
  const auto envelope = read_envelope(code, Kind::assignment, k_assignment_version);
  if (!envelope) return tl::unexpected(envelope.error());
  const auto json = read_cbor(envelope->payload);
  if (!json) return tl::unexpected(json.error());
  auto set = read_v1(*json);
  if (!set) return set;
  const auto shaped = check_shape(*set);
  if (!shaped) return tl::unexpected(shaped.error());
  return set;
}

Result<void> check_assignment(const Assignment& set, const catalog::Library& library) {
  for (const auto& family : set.families) {
    if (catalog::index_of(library.families, family) < 0) {
      return fail("content-other", family, "this page does not have that kind of inhaler");
    }
  }
  return {};
}

Timing timing_of(const Assignment& set, Day today) {
  if (set.expires && today > *set.expires) return Timing::expired;
  return set.due && today > *set.due ? Timing::after_due : Timing::in_time;
}

}  // namespace rehale::exchange
