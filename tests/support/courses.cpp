#include "tests/support/courses.h"

#include <algorithm>
#include <cstdio>

#include "core/catalog/load.h"
#include "core/check/family_bank.h"
#include "core/procedure/grade.h"
#include "tests/support/files.h"

namespace rehale::support {

namespace {

using catalog::Kind;
using catalog::Option;
using catalog::Question;

const std::string k_assets = REHALE_SOURCE_DIR "/assets/";

const catalog::Library& library() {
  static const catalog::Library library = [] {
    std::vector<catalog::Finding> findings;
    auto loaded = catalog::load_library(read_content(k_assets, "library.json", findings));
    return loaded.value ? *std::move(loaded.value) : catalog::Library{};
  }();
  return library;
}

void print(const std::vector<catalog::Finding>& findings) {
  for (const auto& one : findings) {
    std::fprintf(stderr, "%s#%s: %s: %s\n", one.file.c_str(), one.pointer.c_str(), one.rule.c_str(),
                 one.remedy.c_str());
  }
}

std::unique_ptr<check::Course> load(const std::string& family) {
  std::vector<catalog::Finding> findings;
  const auto files = read_family(k_assets, library(), family, findings);
  auto loaded = catalog::load_family(library(), family, files);
  print(findings);
  print(loaded.findings);
  if (!loaded.value) return nullptr;
  auto course = check::make_course(*std::move(loaded.value), "shipped-" + family);
  return course ? std::make_unique<check::Course>(*std::move(course)) : nullptr;
}

bool among(const std::vector<std::string>& list, const std::string& id) {
  return std::ranges::find(list, id) != list.end();
}

// The wrong option this person is drawn to, or -1.
int drawn_to(const Question& question, const std::vector<std::string>& lacks,
             const std::vector<std::string>& holds) {
  int best = -1;
  for (int n = 0; n < static_cast<int>(question.options.size()); ++n) {
    const Option& option = question.options[static_cast<std::size_t>(n)];
    if (option.right) continue;
    if (among(holds, option.misconception)) return n;
    if (option.misconception.empty() && among(lacks, option.technique)) best = n;
  }
  return best;
}

bool lacks_any(const Question& question, const std::vector<std::string>& lacks) {
  return std::ranges::any_of(question.techniques, [&](const auto& id) { return among(lacks, id); });
}

// Of all orders that break rules of lacking techniques only, the one that breaks most; at most 6
// cards.
check::Answer find_scripted_order(const check::Course& course, const Question& question,
                                  const std::vector<std::string>& lacks) {
  std::vector<catalog::Id> cards = question.actions;
  std::ranges::sort(cards);
  check::Answer best = check::right_answer(course.family, question);
  int most = 0;
  do {
    const auto grade = procedure::grade_order(course.family, question, cards);
    int broken = 0;
    bool others = false;
    for (const auto& mark : grade->marks) {
      if (mark.kept) continue;
      ++broken;
      others = others || !among(lacks, mark.constraint.technique);
    }
    if (others || broken <= most) continue;
    most = broken;
    best.picked = cards;
  } while (std::ranges::next_permutation(cards).found);
  return best;
}

// Looked for once: many scripted people lack the same.
check::Answer scripted_order(const check::Course& course, const Question& question,
                             const std::vector<std::string>& lacks) {
  static std::map<std::string, check::Answer> known;
  std::string key = course.family.id + "/" + question.id;
  for (const std::string& id : lacks) key += "," + id;
  const auto found = known.find(key);
  if (found != known.end()) return found->second;
  return known[key] = find_scripted_order(course, question, lacks);
}

check::Answer scripted_several(const Question& question, const std::vector<std::string>& lacks,
                               const std::vector<std::string>& holds) {
  check::Answer answer;
  for (const Option& option : question.options) {
    const bool lacking = among(lacks, option.technique);
    const bool drawn = option.misconception.empty() ? lacking : among(holds, option.misconception);
    if (option.right ? !lacking : drawn) answer.picked.push_back(option.id);
  }
  return answer;
}

}  // namespace

const std::vector<std::string>& shipped_families() { return library().families; }

const check::Course* shipped_course(const std::string& family) {
  static std::map<std::string, std::unique_ptr<check::Course>> courses;
  if (!courses.contains(family)) courses[family] = load(family);
  return courses[family].get();
}

check::Answer scripted_answer(const check::Course& course, int question,
                              const std::vector<std::string>& lacks,
                              const std::vector<std::string>& holds) {
  const Question& asked = course.family.questions[static_cast<std::size_t>(question)];
  if (asked.kind == Kind::several) return scripted_several(asked, lacks, holds);
  if (!lacks_any(asked, lacks)) return check::right_answer(course.family, asked);
  if (asked.kind == Kind::order) return scripted_order(course, asked, lacks);
  const int option = drawn_to(asked, lacks, holds);
  if (option < 0) return {.unsure = true};
  check::Answer answer;
  if (asked.kind == Kind::timing || asked.kind == Kind::numbers) {
    answer.amount = asked.options[static_cast<std::size_t>(option)].from;
  } else {
    answer.picked = {asked.options[static_cast<std::size_t>(option)].id};
  }
  return answer;
}

check::Run scripted_run(const check::Course& course, const Script& script) {
  check::Event begin{.what = check::What::begin};
  begin.family = course.family.id;
  begin.content = course.content;
  begin.language = "en";
  begin.seed = script.seed;
  begin.recent = script.recent;
  begin.focus = script.focus;
  begin.questions = script.questions;
  check::Run run = *check::Run::begin(course, begin);
  double at_ms = 0;
  while (const auto next = run.next_question()) {
    const auto& id = course.family.questions[static_cast<std::size_t>(*next)].id;
    check::Event shown{.what = check::What::shown, .at_ms = at_ms += 500, .question = id};
    check::Event answered{.what = check::What::answered, .at_ms = at_ms += 4000, .question = id};
    answered.answer = scripted_answer(course, *next, script.lacks, script.holds);
    if (!run.apply(shown) || !run.apply(answered)) break;
  }
  return run;
}

}  // namespace rehale::support
