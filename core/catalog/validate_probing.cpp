#include <array>
#include <bitset>

#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

constexpr std::size_t k_fewest_questions = 28;
constexpr std::array<const char*, 6> k_kind_names{"one",     "several", "order",
                                                  "picture", "timing",  "numbers"};

using Kinds = std::bitset<k_kind_names.size()>;

std::size_t bit(Kind kind) { return static_cast<std::size_t>(kind); }

// Questions that need the technique, and in how many ways they ask.
struct Probes {
  int questions = 0;
  Kinds kinds;
  bool alone = false;  // one needs it and nothing else: else two techniques could not be told apart
};

Probes probes_of(const Family& family, const Id& technique) {
  Probes probes;
  for (const auto& question : family.questions) {
    if (!holds(question.techniques, technique)) continue;
    ++probes.questions;
    probes.kinds.set(bit(question.kind));
    probes.alone = probes.alone || question.techniques.size() == 1;
  }
  return probes;
}

void validate_technique_probes(const Check& check, std::size_t i) {
  const auto& technique = check.family.techniques[i];
  const auto probes = probes_of(check.family, technique.id);
  const int wanted = technique.critical ? 3 : 2;
  const auto kinds = static_cast<int>(probes.kinds.count());
  if (probes.questions < wanted || kinds < 2) {
    check(
        at("/techniques", i), "technique-probes",
        {"\"", technique.id, "\" is asked by ", std::to_string(probes.questions), " questions of ",
         std::to_string(kinds), " kinds; at least ", std::to_string(wanted), " of 2 kinds"});
  }
  if (!probes.alone) {
    check(at("/techniques", i), "technique-not-alone",
          {"no question needs \"", technique.id, "\" and nothing else"});
  }
}

int questions_betraying(const Family& family, const Id& misconception) {
  return static_cast<int>(std::count_if(
      family.questions.begin(), family.questions.end(), [&](const Question& question) {
        return std::any_of(
            question.options.begin(), question.options.end(),
            [&](const Option& option) { return option.misconception == misconception; });
      }));
}

}  // namespace

void validate_probing(const Check& check) {
  const auto& family = check.family;
  for (std::size_t i = 0; i < family.techniques.size(); ++i) validate_technique_probes(check, i);
  for (std::size_t i = 0; i < family.misconceptions.size(); ++i) {
    const auto& id = family.misconceptions[i].id;
    if (const int n = questions_betraying(family, id); n < 2) {
      check(
          at("/misconceptions", i), "misconception-probes",
          {"\"", id, "\" is betrayed by options of ", std::to_string(n), " questions; at least 2"});
    }
  }
}

void validate_bank(const Check& check) {
  const auto& questions = check.family.questions;
  if (questions.size() < k_fewest_questions) {
    check("/questions", "question-count",
          {std::to_string(questions.size()), " questions; at least ",
           std::to_string(k_fewest_questions)});
  }
  Kinds kinds;
  for (const auto& question : questions) kinds.set(bit(question.kind));
  for (std::size_t kind = 0; kind < k_kind_names.size(); ++kind) {
    if (!kinds[kind])
      check("/questions", "kind-unused", {"no question of kind ", k_kind_names[kind]});
  }
}

}  // namespace rehale::catalog
