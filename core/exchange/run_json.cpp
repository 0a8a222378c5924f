#include "core/exchange/run_json.h"

#include <array>
#include <cmath>

#include <nlohmann/json.hpp>

namespace rehale::exchange {

namespace {

using check::Answer;
using check::Event;
using check::What;
using Json = nlohmann::ordered_json;

constexpr std::array<const char*, 5> k_words{"begin", "shown", "answered", "retry-shown",
                                             "retry-answered"};
constexpr std::size_t k_max_id = 64;
constexpr std::size_t k_max_list = 64;
constexpr double k_max_ms = 1e12;

bool has_answer(What what) { return what == What::answered || what == What::retry_answered; }

Json answer_json(const Answer& answer) {
  if (answer.unsure) return {{"unsure", true}};
  if (!answer.picked.empty()) return {{"picked", answer.picked}};
  return {{"amount", answer.amount}};
}

Json event_json(const Event& event) {
  Json json{{"what", k_words[static_cast<std::size_t>(event.what)]}, {"at_ms", event.at_ms}};
  if (event.what == What::begin) {
    json["family"] = event.family;
    json["seed"] = std::to_string(event.seed);  // 64 bits do not fit a JSON number everywhere
    json["content"] = event.content;
    json["language"] = event.language;
    json["recent"] = event.recent;
    if (!event.focus.empty()) json["focus"] = event.focus;
    if (event.questions != 0) json["questions"] = event.questions;
    return json;
  }
  json["question"] = event.question;
  if (has_answer(event.what)) json["answer"] = answer_json(event.answer);
  return json;
}

tl::unexpected<Error> shape(const std::string& where, const char* wanted) {
  return fail("log-shape", where, wanted);
}

Result<std::string> text_of(const Json& json, const char* key, const std::string& where) {
  const auto found = json.find(key);
  if (found == json.end() || !found->is_string() ||
      found->get_ref<const std::string&>().size() > k_max_id) {
    return shape(where + "/" + key, "expected a short text here");
  }
  return found->get<std::string>();
}

Result<std::vector<std::string>> texts_of(const Json& json, const char* key,
                                          const std::string& where) {
  const auto found = json.find(key);
  std::vector<std::string> list;
  if (found == json.end()) return list;
  if (!found->is_array() || found->size() > k_max_list) {
    return shape(where + "/" + key, "expected a list of names");
  }
  for (const Json& entry : *found) {
    if (!entry.is_string() || entry.get_ref<const std::string&>().size() > k_max_id) {
      return shape(where + "/" + key, "expected names, each a short text");
    }
    list.push_back(entry.get<std::string>());
  }
  return list;
}

Result<double> number_of(const Json& json, const char* key, const std::string& where) {
  const auto found = json.find(key);
  if (found == json.end() || !found->is_number()) {
    return shape(where + "/" + key, "expected a number");
  }
  const double value = found->get<double>();
  if (!std::isfinite(value) || std::abs(value) > k_max_ms) {
    return shape(where + "/" + key, "expected a number of sensible size");
  }
  return value;
}

Result<std::uint64_t> seed_of(const Json& json, const std::string& where) {
  auto text = text_of(json, "seed", where);
  if (!text) return tl::unexpected(text.error());
  std::uint64_t seed = 0;
  for (const char digit : *text) {
    const auto value = static_cast<std::uint64_t>(digit - '0');
    if (digit < '0' || digit > '9' || seed > (UINT64_MAX - value) / 10) {
      return shape(where + "/seed", "expected a whole number below 2^64, as text");
    }
    seed = seed * 10 + value;
  }
  if (text->empty()) return shape(where + "/seed", "expected a whole number, as text");
  return seed;
}

Result<Answer> read_answer(const Json& event, const std::string& where) {
  const auto found = event.find("answer");
  if (found == event.end() || !found->is_object()) {
    return fail("log-truncated", where + "/answer", "the answer of this event is missing");
  }
  Answer answer;
  const auto unsure = found->find("unsure");
  if (unsure != found->end()) {
    if (!unsure->is_boolean()) return shape(where + "/answer/unsure", "expected true");
    answer.unsure = unsure->get<bool>();
  }
  auto picked = texts_of(*found, "picked", where + "/answer");
  if (!picked) return tl::unexpected(picked.error());
  answer.picked = *std::move(picked);
  if (found->contains("amount")) {
    const auto amount = number_of(*found, "amount", where + "/answer");
    if (!amount) return tl::unexpected(amount.error());
    answer.amount = *amount;
  }
  return answer;
}

Result<What> what_of(const Json& json, const std::string& where) {
  const auto word = text_of(json, "what", where);
  if (!word) return tl::unexpected(word.error());
  for (std::size_t n = 0; n < k_words.size(); ++n) {
    if (*word == k_words[n]) return static_cast<What>(n);
  }
  return shape(where + "/what", "expected begin, shown, answered, retry-shown or retry-answered");
}

Result<void> read_begin(const Json& json, const std::string& where, Event& event) {
  auto family = text_of(json, "family", where);
  if (!family) return tl::unexpected(family.error());
  const auto seed = seed_of(json, where);
  if (!seed) return tl::unexpected(seed.error());
  auto content = text_of(json, "content", where);
  if (!content) return tl::unexpected(content.error());
  auto language = text_of(json, "language", where);
  if (!language) return tl::unexpected(language.error());
  auto recent = texts_of(json, "recent", where);
  if (!recent) return tl::unexpected(recent.error());
  auto focus = texts_of(json, "focus", where);
  if (!focus) return tl::unexpected(focus.error());
  if (json.contains("questions")) {
    const auto questions = number_of(json, "questions", where);
    if (!questions || *questions != std::floor(*questions) || *questions < 0 || *questions > 99) {
      return shape(where + "/questions", "expected how many questions were set");
    }
    event.questions = static_cast<int>(*questions);
  }
  event.focus = *std::move(focus);
  event.family = *std::move(family);
  event.seed = *seed;
  event.content = *std::move(content);
  event.language = *std::move(language);
  event.recent = *std::move(recent);
  return {};
}

Result<Event> read_event(const Json& json, const std::string& where) {
  if (!json.is_object()) return shape(where, "expected an event");
  Event event;
  const auto what = what_of(json, where);
  if (!what) return tl::unexpected(what.error());
  event.what = *what;
  const auto at_ms = number_of(json, "at_ms", where);
  if (!at_ms) return tl::unexpected(at_ms.error());
  event.at_ms = *at_ms;
  if (event.what == What::begin) {
    const auto begun = read_begin(json, where, event);
    if (!begun) return tl::unexpected(begun.error());
    return event;
  }
  auto question = text_of(json, "question", where);
  if (!question) return tl::unexpected(question.error());
  event.question = *std::move(question);
  if (!has_answer(event.what)) return event;
  auto answer = read_answer(json, where);
  if (!answer) return tl::unexpected(answer.error());
  event.answer = *std::move(answer);
  return event;
}

// A pre-scan, so that a hostile text cannot make the parser nest without end.
bool too_deep(std::string_view text) {
  int depth = 0;
  bool in_text = false;
  for (std::size_t n = 0; n < text.size(); ++n) {
    const char c = text[n];
    if (in_text) {
      if (c == '\\') ++n;
      if (c == '"') in_text = false;
    } else if (c == '"') {
      in_text = true;
    } else if (c == '{' || c == '[') {
      if (++depth > 8) return true;
    } else if (c == '}' || c == ']') {
      --depth;
    }
  }
  return false;
}

}  // namespace

std::string write_log(const check::Log& log) {
  Json events = Json::array();
  for (const Event& event : log) events.push_back(event_json(event));
  return Json{{"schema", 1}, {"kind", "rehale-run"}, {"events", std::move(events)}}.dump();
}

Result<check::Log> read_log(std::string_view text) {
  if (text.size() > k_max_log_bytes || too_deep(text)) {
    return fail("log-too-long", "", "this is larger or deeper than any run of the self-check");
  }
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) {
    return fail("log-not-json", "",
                "the text breaks off or is not JSON; copy the whole of it again");
  }
  if (!json.is_object() || !json.contains("events") || !json["events"].is_array() ||
      json.value("kind", Json()) != "rehale-run") {
    return shape("", "expected a run of the self-check: kind \"rehale-run\" with events");
  }
  if (json.value("schema", Json()) != 1) {
    return shape("/schema", "expected schema 1; a newer page wrote this: open it there");
  }
  const Json& events = json["events"];
  if (events.size() > k_max_log_events) return fail("log-too-long", "/events", "too many events");
  check::Log log;
  for (std::size_t n = 0; n < events.size(); ++n) {
    auto event = read_event(events[n], "/events/" + std::to_string(n));
    if (!event) return tl::unexpected(event.error());
    log.push_back(*std::move(event));
  }
  return log;
}

}  // namespace rehale::exchange
