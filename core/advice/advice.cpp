#include "core/advice/advice.h"

#include <algorithm>

#include "core/check/family_bank.h"

namespace rehale::advice {

namespace {

using check::Given;
using check::Mark;
using mastery::Label;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// Parts of an answer that speak about one technique, met or not.
Because parts_of(const Given& given, const Id& technique, bool met) {
  Because because{given.question, {}};
  for (const Mark& mark : given.marking.marks) {
    if (mark.technique == technique && mark.met == met) because.parts.push_back(mark.part);
  }
  return because;
}

std::vector<Because> shown_by(const check::Run& run, const Id& technique, bool met) {
  std::vector<Because> all;
  for (const Given& given : run.given()) {
    Because because = parts_of(given, technique, met);
    if (!because.parts.empty()) all.push_back(std::move(because));
  }
  return all;
}

// A question that asks about this technique alone and was answered as wanted.
const Because* plain_right(const check::Run& run, const std::vector<Because>& right) {
  for (const Because& because : right) {
    if (run.course().family.questions[at(because.question)].techniques.size() == 1) return &because;
  }
  return nullptr;
}

int held_against(const check::Run& run, const mastery::Verdict& verdict, int technique) {
  const catalog::Family& family = run.course().family;
  int best = -1;
  double most = 0;
  for (int b = 0; b < static_cast<int>(family.misconceptions.size()); ++b) {
    const auto& told = verdict.misconceptions[at(b)];
    const bool against =
        family.misconceptions[at(b)].rules_out == family.techniques[at(technique)].id;
    if (against && told.held == mastery::Held::held && told.probability > most) {
      best = b;
      most = told.probability;
    }
  }
  return best;
}

// Weight of a technique in the ranking: critical ones first, by published checklists.
double need_weight(const catalog::Technique& technique) {
  return technique.critical ? 1 + technique.weight : technique.weight;
}

void sort_technique(const check::Run& run, const mastery::Verdict& verdict, int technique,
                    Advice& advice) {
  const catalog::Technique& what = run.course().family.techniques[at(technique)];
  const auto& told = verdict.techniques[at(technique)];
  std::vector<Because> lapses = shown_by(run, what.id, false);
  const std::vector<Because> right = shown_by(run, what.id, true);
  const Because* plain = plain_right(run, right);
  if (!lapses.empty() && plain != nullptr) {
    advice.differing.push_back({technique, *plain, lapses.front()});
  }
  const bool lacking = told.label == Label::not_yet;
  if (lacking || !lapses.empty()) {
    const double p = 1 - told.probability;
    advice.to_mend.push_back({technique, held_against(run, verdict, technique), p,
                              need_weight(what) * p, !lapses.empty(), std::move(lapses)});
  } else if (told.label == Label::has_it) {
    advice.going_well.push_back({technique, false});
  } else {
    advice.cannot_tell.push_back(technique);
  }
}

}  // namespace

Practice practice_of(const check::Run& run, int technique) {
  const Id& id = run.course().family.techniques[at(technique)].id;
  Practice practice;
  for (const Given& given : run.retries()) {
    const auto about = [&id](const Mark& mark) { return mark.technique == id; };
    const auto missed = [&](const Mark& mark) { return about(mark) && !mark.met; };
    const auto& marks = given.marking.marks;
    if (!std::ranges::any_of(marks, about) && !given.marking.unsure) continue;
    const auto& asks = run.course().family.questions[at(given.question)].techniques;
    if (std::ranges::find(asks, id) == asks.end()) continue;
    ++practice.tries;
    if (!given.marking.unsure && std::ranges::none_of(marks, missed)) ++practice.right;
  }
  return practice;
}

Advice advise(const check::Run& run) {
  const mastery::Verdict verdict = run.verdict();
  const catalog::Family& family = run.course().family;
  Advice advice;
  advice.ready = run.finished();
  for (int k = 0; k < static_cast<int>(family.techniques.size()); ++k) {
    sort_technique(run, verdict, k, advice);
    const auto& told = verdict.techniques[at(k)];
    if (family.techniques[at(k)].critical && (told.label != Label::has_it || !told.probed)) {
      advice.ready = false;
    }
  }
  std::ranges::stable_sort(advice.to_mend, std::greater{}, &ToMend::need);
  for (const ToMend& item : advice.to_mend) {
    if (family.techniques[at(item.technique)].critical) advice.ready = false;
  }
  return advice;
}

}  // namespace rehale::advice
