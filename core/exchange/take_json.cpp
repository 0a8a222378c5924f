#include "core/exchange/take_json.h"

#include <nlohmann/json.hpp>

#include "core/exchange/run_json.h"

namespace rehale::exchange {

namespace {

using rehearsal::Act;
using rehearsal::Take;
using Json = nlohmann::ordered_json;

constexpr std::size_t k_max_id = 64;

Json act_json(const Act& act) {
  Json json{{"step", act.step}, {"start_ms", act.start_ms}, {"end_ms", act.end_ms}};
  if (act.skipped) json["skipped"] = true;
  return json;
}

Json take_json(const Take& take) {
  Json acts = Json::array();
  for (const Act& act : take.acts) acts.push_back(act_json(act));
  return {{"family", take.family},
          {"content", take.content},
          {"guided", take.guided},
          {"doses", take.doses},
          {"acts", std::move(acts)}};
}

tl::unexpected<Error> shape(const std::string& where, const char* wanted) {
  return fail("log-shape", where, wanted);
}

// What `key` holds when it is there and of that kind; null otherwise.
const Json* member(const Json& json, const char* key, bool (Json::*is)() const noexcept) {
  const auto found = json.is_object() ? json.find(key) : json.end();
  return found != json.end() && ((*found).*is)() ? &*found : nullptr;
}

const std::string* short_text(const Json& json, const char* key) {
  const Json* found = member(json, key, &Json::is_string);
  if (found == nullptr) return nullptr;
  const auto& text = found->get_ref<const std::string&>();
  return text.size() <= k_max_id ? &text : nullptr;
}

Result<Act> read_act(const Json& json, const std::string& where) {
  const std::string* step = short_text(json, "step");
  const Json* start = member(json, "start_ms", &Json::is_number);
  const Json* end = member(json, "end_ms", &Json::is_number);
  if (step == nullptr || start == nullptr || end == nullptr)
    return shape(where, "expected a step with start_ms and end_ms");
  return Act{*step, start->get<double>(), end->get<double>(),
             json.value("skipped", Json()) == true};
}

Result<Take> read_take(const Json& json, const std::string& where) {
  const std::string* family = short_text(json, "family");
  const std::string* content = short_text(json, "content");
  const Json* doses = member(json, "doses", &Json::is_number_integer);
  const Json* acts = member(json, "acts", &Json::is_array);
  if (family == nullptr || content == nullptr || doses == nullptr || acts == nullptr)
    return shape(where, "expected a family, its content, doses and acts");
  if (*doses != 1 && *doses != 2) return shape(where + "/doses", "expected 1 or 2");
  if (acts->size() > rehearsal::k_most_acts) return shape(where + "/acts", "too many acts");
  Take take{*family, *content, json.value("guided", Json()) == true, doses->get<int>(), {}};
  for (std::size_t n = 0; n < acts->size(); ++n) {
    auto act = read_act((*acts)[n], where + "/acts/" + std::to_string(n));
    if (!act) return tl::unexpected(act.error());
    take.acts.push_back(*std::move(act));
  }
  return take;
}

}  // namespace

std::string write_log_with(const check::Log& log, const std::vector<Take>& takes) {
  std::string text = write_log(log);
  if (takes.empty()) return text;
  Json list = Json::array();
  for (const Take& take : takes) list.push_back(take_json(take));
  text.pop_back();  // the closing brace
  return text + ",\"rehearsals\":" + list.dump() + '}';
}

Result<std::vector<Take>> read_takes(std::string_view text) {
  // The events beside them bound the text: its size, and how deep it nests.
  if (const auto log = read_log(text); !log) return tl::unexpected(log.error());
  const Json json = Json::parse(text, nullptr, false);
  std::vector<Take> takes;
  const auto list = json.find("rehearsals");
  if (list == json.end()) return takes;
  if (!list->is_array() || list->size() > k_max_takes)
    return shape("/rehearsals", "expected a list of run-throughs");
  for (std::size_t n = 0; n < list->size(); ++n) {
    auto take = read_take((*list)[n], "/rehearsals/" + std::to_string(n));
    if (!take) return tl::unexpected(take.error());
    takes.push_back(*std::move(take));
  }
  return takes;
}

}  // namespace rehale::exchange
