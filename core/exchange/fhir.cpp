#include "core/exchange/fhir.h"

#include <cmath>
#include <utility>

#include "core/base/hash.h"
#include "core/exchange/cbor.h"

namespace rehale::exchange {

namespace {

using catalog::Kind;
using catalog::Question;

// FHIR's own systems: units (UCUM) and the category of observations.
constexpr const char* k_units = "http://unitsofmeasure.org";
constexpr const char* k_categories = "http://terminology.hl7.org/CodeSystem/observation-category";

// RFC 9562 version 8 (own rule): two hashes of what it names.
std::string urn_of(const std::string& name) {
  const std::uint64_t words[] = {fnv1a(name), fnv1a(name + "/")};
  std::string uuid = "urn:uuid:00000000-0000-8000-8000-000000000000";
  std::size_t digit = 0;
  for (std::size_t at = 9; at < uuid.size(); ++at) {
    if (uuid[at] == '-') continue;
    const auto nibble =
        static_cast<std::size_t>(words[digit / 16] >> (60 - 4 * (digit % 16)) & 15U);
    if (digit == 16) uuid[at] = "89ab"[nibble & 3U];              // variant
    else if (digit != 12) uuid[at] = "0123456789abcdef"[nibble];  // 12: version
    ++digit;
  }
  return uuid;
}

bool is_amount(const Question& question) {
  return question.kind == Kind::timing || question.kind == Kind::numbers;
}

class Writer {
 public:
  Writer(const check::Run& run, const ResultHead& head, const catalog::Texts& texts,
         const FhirWords& words)
      : run_(run), head_(head), texts_(texts), words_(words), family_(run.course().family) {}

  Result<std::string> bundle(std::uint64_t key) {
    const std::string run_name = std::to_string(key);
    form_ = urn_of("questionnaire/" + run_name);
    answers_ = urn_of("answers/" + run_name);
    Json entries = Json::array();
    for (auto& [url, part] : {std::pair{form_, questionnaire()},
                              {answers_, response()},
                              {urn_of("observation/" + run_name), observation()}}) {
      entries.push_back({{"fullUrl", url}, {"resource", part}});
    }
    if (!missing_.empty()) {
      return fail("missing-text", missing_, "put this sentence into the family's text file");
    }
    return Json{{"resourceType", "Bundle"}, {"type", "collection"}, {"entry", std::move(entries)}}
        .dump();
  }

 private:
  std::string text(const std::string& path) {
    const std::string* found = texts_.find(path);
    if (found != nullptr) return *found;
    if (missing_.empty()) missing_ = path;
    return path;
  }

  [[nodiscard]] Json coding(const std::string& code, const std::string& display) const {
    return {{"system", k_fhir_system}, {"code", code}, {"display", display}};
  }

  Json option_coding(const Question& question, const catalog::Id& id) {
    const std::string path = question.kind == Kind::order
                                 ? "actions/" + id + "/label"
                                 : "questions/" + question.id + "/options/" + id + "/label";
    return coding(family_.id + "." + question.id + "." + id, text(path));
  }

  Json unsure_coding() { return coding("unsure", words_.unsure); }

  Json item(const Question& question) {
    Json item{{"linkId", question.id}, {"text", text("questions/" + question.id + "/ask")}};
    item["type"] = is_amount(question) ? "decimal" : "choice";
    if (is_amount(question)) return item;
    // an order is answered by its cards, one after the other
    item["repeats"] = question.kind == Kind::several || question.kind == Kind::order;
    Json options = Json::array();
    for (const auto& option : question.options) {
      options.push_back({{"valueCoding", option_coding(question, option.id)}});
    }
    for (const auto& action : question.actions) {
      options.push_back({{"valueCoding", option_coding(question, action)}});
    }
    options.push_back({{"valueCoding", unsure_coding()}});
    item["answerOption"] = std::move(options);
    return item;
  }

  Json questionnaire() {
    Json items = Json::array();
    for (const auto& given : run_.given()) items.push_back(item(question_of(given)));
    return {
        {"resourceType", "Questionnaire"}, {"url", form_},       {"version", run_.course().content},
        {"title", words_.title},           {"status", "active"}, {"item", std::move(items)}};
  }

  Json response() {
    Json items = Json::array();
    for (const auto& given : run_.given()) {
      const Question& question = question_of(given);
      Json item{{"linkId", question.id}, {"text", text("questions/" + question.id + "/ask")}};
      Json answers = Json::array();
      if (given.answer.unsure && !is_amount(question)) {
        answers.push_back({{"valueCoding", unsure_coding()}});
      } else if (is_amount(question) && !given.answer.unsure) {
        answers.push_back({{"valueDecimal", given.answer.amount}});
      }
      for (const auto& id : given.answer.picked) {
        answers.push_back({{"valueCoding", option_coding(question, id)}});
      }
      if (!answers.empty()) item["answer"] = std::move(answers);  // none ticked, or not sure
      items.push_back(std::move(item));
    }
    return {{"resourceType", "QuestionnaireResponse"},
            {"questionnaire", form_ + "|" + run_.course().content},
            {"status", run_.finished() ? "completed" : "in-progress"},
            {"authored", iso_date(head_.day)},
            {"item", std::move(items)}};
  }

  Json component(std::size_t index, const mastery::Verdict::Technique& told) {
    const auto& id = family_.techniques[index].id;
    const char* label = told.label == mastery::Label::has_it    ? "has-it"
                        : told.label == mastery::Label::not_yet ? "not-yet"
                        : told.probed                           ? "unsure"
                                                                : "not-asked";
    const Json name = coding(family_.id + "." + id, text("techniques/" + id + "/name"));
    // three places: a teaching estimate
    const double chance = std::round(told.probability * 1000) / 1000;
    return {
        {"code", {{"coding", Json::array({name})}}},
        {"valueQuantity", {{"value", chance}, {"unit", "1"}, {"system", k_units}, {"code", "1"}}},
        {"interpretation", Json::array({{{"coding", Json::array({coding(label, label)})}}})}};
  }

  Json observation() {
    Json components = Json::array();
    const auto verdict = run_.verdict();
    for (std::size_t k = 0; k < verdict.techniques.size(); ++k) {
      components.push_back(component(k, verdict.techniques[k]));
    }
    const Json survey{{"system", k_categories}, {"code", "survey"}, {"display", "Survey"}};
    const Json check = coding(family_.id + ".self-check", words_.title);
    return {{"resourceType", "Observation"},
            {"status", run_.finished() ? "final" : "preliminary"},
            {"category", Json::array({{{"coding", Json::array({survey})}}})},
            {"code", {{"coding", Json::array({check})}, {"text", words_.title}}},
            {"effectiveDateTime", iso_date(head_.day)},
            {"note", Json::array({{{"text", words_.origin}}})},
            {"method", {{"text", words_.origin}}},
            {"derivedFrom", Json::array({{{"reference", answers_}}})},
            {"component", std::move(components)}};
  }

  [[nodiscard]] const Question& question_of(const check::Given& given) const {
    return family_.questions[static_cast<std::size_t>(given.question)];
  }

  const check::Run& run_;
  const ResultHead& head_;
  const catalog::Texts& texts_;
  const FhirWords& words_;
  const catalog::Family& family_;
  std::string form_, answers_, missing_;
};

}  // namespace

Result<std::string> write_fhir(const check::Run& run, const ResultHead& head,
                               const catalog::Texts& texts, const FhirWords& words,
                               std::uint64_t key) {
  return Writer(run, head, texts, words).bundle(key);
}

}  // namespace rehale::exchange
