#include "core/check/marking.h"

#include <algorithm>
#include <cmath>

#include "core/check/family_bank.h"
#include "core/mastery/evidence.h"
#include "core/procedure/grade.h"

namespace rehale::check {

namespace {

using catalog::Family;
using catalog::Kind;
using catalog::Option;
using catalog::Question;

tl::unexpected<Error> shape(const Question& question, const char* wanted) {
  return fail("answer-shape", question.id, wanted);
}

bool is_amount(const Question& question) {
  return question.kind == Kind::timing || question.kind == Kind::numbers;
}

bool holds(const std::vector<Id>& list, const Id& id) {
  return std::ranges::find(list, id) != list.end();
}

// Wrong options carry the technique they show lacking, or the misconception and through it the
// technique.
Mark mark_of(const Family& family, const Question& question, const Option& option, bool met) {
  Mark mark{option.id, met, option.technique, {}};
  if (!met) mark.misconception = option.misconception;
  const int rule = misconception_index(family, option.misconception);
  if (mark.technique.empty() && rule >= 0) {
    mark.technique = family.misconceptions[static_cast<std::size_t>(rule)].rules_out;
  }
  if (mark.technique.empty() && !question.techniques.empty()) {
    mark.technique = question.techniques.front();
  }
  return mark;
}

// A right choice speaks for every technique the question needs.
void met_marks(const Question& question, const Option& option, Marking& marking) {
  for (const Id& technique : question.techniques) {
    marking.marks.push_back({option.id, true, technique, {}});
  }
}

Marking mark_choice(const Family& family, const Question& question, std::size_t picked) {
  Marking marking;
  const Option& option = question.options[picked];
  marking.right = option.right;
  if (option.right) {
    met_marks(question, option, marking);
  } else {
    marking.marks.push_back(mark_of(family, question, option, false));
  }
  marking.columns = {static_cast<int>(picked)};
  return marking;
}

Result<Marking> mark_one(const Family& family, const Question& question, const Answer& answer) {
  if (answer.picked.size() != 1) return shape(question, "expected exactly one option");
  const auto found = std::ranges::find(question.options, answer.picked.front(), &Option::id);
  if (found == question.options.end()) return shape(question, "there is no such option");
  return mark_choice(family, question, static_cast<std::size_t>(found - question.options.begin()));
}

Result<Marking> mark_amount(const Family& family, const Question& question, const Answer& answer) {
  const auto in_band = [&answer](const Option& band) {
    return answer.amount >= band.from && answer.amount < band.to;
  };
  const auto found = std::ranges::find_if(question.options, in_band);
  if (!answer.picked.empty() || !std::isfinite(answer.amount) || found == question.options.end()) {
    return shape(question, "expected an amount that one of the question's bands holds");
  }
  return mark_choice(family, question, static_cast<std::size_t>(found - question.options.begin()));
}

Result<Marking> mark_several(const Family& family, const Question& question, const Answer& answer) {
  for (const Id& id : answer.picked) {
    const bool known =
        std::ranges::find(question.options, id, &Option::id) != question.options.end();
    if (!known || std::ranges::count(answer.picked, id) > 1) {
      return shape(question, "expected options of this question, each at most once");
    }
  }
  Marking marking;
  marking.right = true;
  marking.columns = {mastery::k_answered};
  for (const Option& option : question.options) {
    const bool met = holds(answer.picked, option.id) == option.right;
    marking.right = marking.right && met;
    marking.marks.push_back(mark_of(family, question, option, met));
    marking.columns.push_back(met ? mastery::k_met : mastery::k_missed);
  }
  return marking;
}

Result<Marking> mark_order(const Family& family, const Question& question, const Answer& answer) {
  const auto grade = procedure::grade_order(family, question, answer.picked);
  if (!grade) return fail("answer-shape", question.id, grade.error().detail);
  const auto parts = order_marks(family, question);
  if (!parts) return tl::unexpected(parts.error());
  Marking marking;
  marking.right = grade->right;
  marking.moves_to_mend = static_cast<int>(grade->moves.size());
  marking.mended = grade->mended;
  marking.columns = {mastery::k_answered};
  for (const OrderMark& part : *parts) {
    Mark mark{{}, true, part.technique, {}};
    for (const int n : part.constraints) {
      const auto& told = grade->marks[static_cast<std::size_t>(n)];
      if (mark.part.empty() || (mark.met && !told.kept)) mark.part = told.constraint.rules.front();
      mark.met = mark.met && told.kept;
    }
    if (!mark.met) mark.misconception = part.misconception;
    marking.columns.push_back(mark.met ? mastery::k_met : mastery::k_missed);
    marking.marks.push_back(std::move(mark));
  }
  return marking;
}

Result<Marking> mark_unsure(const Family& family, const Question& question, const Answer& answer) {
  if (!answer.picked.empty()) return shape(question, "not sure, and yet an answer");
  Marking marking;
  marking.unsure = true;
  if (question.kind == Kind::several) {
    marking.columns.assign(question.options.size() + 1, -1);
    marking.columns.front() = mastery::k_unsure;
  } else if (question.kind == Kind::order) {
    const auto parts = order_marks(family, question);
    if (!parts) return tl::unexpected(parts.error());
    marking.columns.assign(parts->size() + 1, -1);
    marking.columns.front() = mastery::k_unsure;
  } else {
    marking.columns = {static_cast<int>(question.options.size())};
  }
  return marking;
}

}  // namespace

Result<Marking> mark_answer(const Family& family, const Question& question, const Answer& answer) {
  if (answer.unsure) return mark_unsure(family, question, answer);
  if (is_amount(question)) return mark_amount(family, question, answer);
  if (question.kind == Kind::several) return mark_several(family, question, answer);
  if (question.kind == Kind::order) return mark_order(family, question, answer);
  return mark_one(family, question, answer);
}

Answer right_answer(const Family& family, const Question& question) {
  Answer answer;
  if (question.kind == Kind::order) {
    const auto grade = procedure::grade_order(family, question, question.actions);
    if (grade) answer.picked = grade->mended;
    return answer;
  }
  for (const Option& option : question.options) {
    if (!option.right) continue;
    if (is_amount(question)) {
      answer.amount = option.from;
    } else {
      answer.picked.push_back(option.id);
    }
  }
  return answer;
}

}  // namespace rehale::check
