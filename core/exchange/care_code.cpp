#include "core/exchange/care_code.h"

#include <utility>

#include "core/exchange/envelope.h"
#include "core/exchange/fields.h"

namespace rehale::exchange {

namespace {

constexpr std::size_t k_longest_family = 48;
constexpr std::size_t k_fields = 16;

bool is_day(const std::optional<Day>& day) {
  return !day || (*day >= k_first_day && *day <= k_last_day);
}

bool within(int value, int least, int most) { return value >= least && value <= most; }

bool within(const std::optional<int>& value, int least, int most) {
  return !value || within(*value, least, most);
}

Result<void> check_shape(const CareState& state) {
  const auto trouble = [](const char* field, const char* wanted) {
    return fail("care-shape", field, wanted);
  };
  if (state.family.empty() || state.family.size() > k_longest_family || !is_name(state.family))
    return trouble("family", "expected the short name of a family");
  if (!within(state.left, 0, k_most_left)) return trouble("left", "0 to 1000 doses");
  if (!within(state.doses_a_day, 0, k_most_doses_a_day)) return trouble("doses", "0 to 12 a day");
  if (!within(state.puffs, 1, k_most_puffs)) return trouble("puffs", "1 to 10 a dose");
  if (state.doses_a_day * state.puffs > k_most_a_day) return trouble("puffs", "at most 40 a day");
  if (!within(state.full, 1, k_most_left)) return trouble("full", "1 to 1000 doses");
  for (const auto& day :
       {std::optional(state.counted), state.opened, state.expiry, state.used, state.cleaned}) {
    if (!is_day(day)) return trouble("day", "expected a day from 1970 on");
  }
  const supply::Leaflet& leaflet = state.leaflet;
  if (!within(leaflet.prime_new, 0, k_most_sprays) || !within(leaflet.prime_idle, 0, k_most_sprays))
    return trouble("sprays", "0 to 20 sprays");
  for (const auto& days :
       {leaflet.in_use_days, leaflet.prime_idle_after_days, leaflet.clean_every_days}) {
    if (!within(days, 1, k_most_days)) return trouble("days", "1 to 1000 days");
  }
  return {};
}

Json or_null(const std::optional<int>& number) { return number ? Json(*number) : Json(nullptr); }

std::optional<int> read_number(Fields& fields, const char* what, int most) {
  if (fields.skip_null()) return {};
  return static_cast<int>(fields.whole(what, 0, most));
}

Result<CareState> read_v1(const Json& json) {
  CareState state;
  Fields fields(json, k_fields);
  state.family = fields.name("family", k_longest_family);
  state.counted = static_cast<Day>(fields.whole("counted", k_first_day, k_last_day));
  state.left = static_cast<int>(fields.whole("left", 0, k_most_left));
  state.doses_a_day = static_cast<int>(fields.whole("doses", 0, k_most_doses_a_day));
  state.puffs = static_cast<int>(fields.whole("puffs", 1, k_most_puffs));
  state.full = read_number(fields, "full", k_most_left);
  state.is_new = fields.whole("new", 0, 1) == 1;
  for (auto* day : {&state.opened, &state.expiry, &state.used, &state.cleaned})
    *day = read_number(fields, "day", k_last_day);
  supply::Leaflet& leaflet = state.leaflet;
  leaflet.in_use_days = read_number(fields, "in use", k_most_days);
  leaflet.prime_new = read_number(fields, "prime new", k_most_sprays);
  leaflet.prime_idle = read_number(fields, "prime idle", k_most_sprays);
  leaflet.prime_idle_after_days = read_number(fields, "idle", k_most_days);
  leaflet.clean_every_days = read_number(fields, "clean", k_most_days);
  const auto done = fields.done();
  if (!done) return tl::unexpected(done.error());
  return state;
}

}  // namespace

Result<std::string> write_care(const CareState& state) {
  const auto shaped = check_shape(state);
  if (!shaped) return tl::unexpected(shaped.error());
  const supply::Leaflet& leaflet = state.leaflet;
  const Json list = Json::array(
      {state.family, state.counted, state.left, state.doses_a_day, state.puffs, or_null(state.full),
       state.is_new ? 1 : 0, or_null(state.opened), or_null(state.expiry), or_null(state.used),
       or_null(state.cleaned), or_null(leaflet.in_use_days), or_null(leaflet.prime_new),
       or_null(leaflet.prime_idle), or_null(leaflet.prime_idle_after_days),
       or_null(leaflet.clean_every_days)});
  return write_envelope(Kind::care, k_care_version, write_cbor(list));
}

Result<CareState> read_care(std::string_view code) {
  const auto envelope = read_envelope(code, Kind::care, k_care_version);
  if (!envelope) return tl::unexpected(envelope.error());
  return unpack_care(envelope->payload);
}

Result<CareState> unpack_care(std::span<const std::uint8_t> payload) {
  const auto json = read_cbor(payload);
  if (!json) return tl::unexpected(json.error());
  auto state = read_v1(*json);
  if (!state) return state;
  const auto shaped = check_shape(*state);
  if (!shaped) return tl::unexpected(shaped.error());
  return state;
}

std::string care_file(const std::string& code) {
  return R"({"schema":1,"kind":"rehale-care","care":")" + code + "\"}";
}

std::string with_care(std::string log, const std::string& code) {
  if (log.empty()) return log;
  log.pop_back();  // the closing brace
  return log + ",\"care\":\"" + code + "\"}";
}

}  // namespace rehale::exchange
