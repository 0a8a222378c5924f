#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

constexpr int k_fewest_cautions = 2, k_most_cautions = 4;

void add(std::vector<std::string>& paths, const std::string& base,
         std::initializer_list<const char*> names) {
  for (const char* name : names) paths.push_back(base + '/' + name);
}

void add_question(std::vector<std::string>& paths, const Question& question) {
  const auto base = "questions/" + question.id;
  add(paths, base, {"ask"});
  const bool bands = question.kind == Kind::timing || question.kind == Kind::numbers;
  for (const auto& option : question.options) {
    const auto place = base + "/options/" + option.id;
    if (!bands) add(paths, place, {"label"});
    add(paths, place, {"why"});
  }
}

}  // namespace

std::vector<std::string> needed_sentences(const Family& family, const Texts& texts) {
  std::vector<std::string> paths{"name", "tell", "looks"};
  for (int i = 1; i <= k_most_cautions; ++i) {
    if (const auto path = "cautions/" + std::to_string(i);
        i <= k_fewest_cautions || texts.find(path) != nullptr)
      paths.push_back(path);
  }
  for (const auto& action : family.actions) add(paths, "actions/" + action.id, {"label"});
  // Steps of the run-through have words of their own only where the action's label tells too much.
  for (const auto& step : family.run_through.steps) {
    if (const auto path = "steps/" + step.id; texts.find(path) != nullptr) paths.push_back(path);
  }
  for (const auto& rule : family.rules) paths.push_back("rules/" + rule.id);
  for (const auto& technique : family.techniques)
    add(paths, "techniques/" + technique.id, {"name", "has", "lacks", "reason", "dose", "remedy"});
  for (const auto& held : family.misconceptions)
    add(paths, "misconceptions/" + held.id, {"name", "lacks", "reason", "dose", "remedy"});
  for (const auto& question : family.questions) add_question(paths, question);
  for (const auto& pose : poses_used(family)) paths.push_back("poses/" + pose);
  std::sort(paths.begin(), paths.end());
  return paths;
}

std::vector<std::string> needed_sentences(const Library& library) {
  std::vector<std::string> paths;
  for (const auto& step : library.finder) {
    const auto base = "finder/" + step.id;
    add(paths, base, {"ask"});
    for (const auto& answer : step.answers) paths.push_back(base + "/answers/" + answer.id);
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

}  // namespace rehale::catalog
