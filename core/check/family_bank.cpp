#include "core/check/family_bank.h"

#include <algorithm>

#include "core/procedure/grade.h"

namespace rehale::check {

namespace {

using catalog::Family;
using catalog::Id;
using catalog::Kind;
using catalog::Option;
using catalog::Question;

template <class List>
int index_of(const List& list, const Id& id) {
  const auto found = std::ranges::find(list, id, &List::value_type::id);
  return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

int misconception_bit(const Family& family, const Id& id) {
  const int index = misconception_index(family, id);
  return index < 0 ? -1 : static_cast<int>(family.techniques.size()) + index;
}

mastery::Bits needs_of(const Family& family, const std::vector<Id>& techniques) {
  mastery::Bits needs = 0;
  for (const Id& id : techniques) {
    const int index = technique_index(family, id);
    if (index >= 0) needs |= mastery::bit(index);
  }
  return needs;
}

int betrays(const Family& family, const Option& option) {
  if (!option.misconception.empty()) return misconception_bit(family, option.misconception);
  return option.technique.empty() ? -1 : technique_index(family, option.technique);
}

using Pieces = Result<std::vector<mastery::Piece>>;

Pieces choice_pieces(const Family& family, const mastery::Model& model, const Question& question) {
  std::vector<mastery::OptionMeaning> meanings;
  for (const Option& option : question.options) {
    meanings.push_back({option.right, option.right ? -1 : betrays(family, option)});
  }
  auto piece = mastery::choice_piece(model, {needs_of(family, question.techniques), meanings});
  if (!piece) return tl::unexpected(piece.error());
  return std::vector{*std::move(piece)};
}

// First whether it was answered at all, then one piece a mark.
Pieces mark_pieces(const mastery::Model& model, mastery::Bits needs,
                   const std::vector<mastery::Mark>& marks) {
  std::vector<mastery::Piece> pieces;
  auto answered = mastery::unsure_piece(model, needs);
  if (!answered) return tl::unexpected(answered.error());
  pieces.push_back(*std::move(answered));
  for (const mastery::Mark& mark : marks) {
    auto piece = mastery::mark_piece(model, mark);
    if (!piece) return tl::unexpected(piece.error());
    pieces.push_back(*std::move(piece));
  }
  return pieces;
}

Pieces several_pieces(const Family& family, const mastery::Model& model, const Question& question) {
  std::vector<mastery::Mark> marks;
  for (const Option& option : question.options) {
    marks.push_back(
        {needs_of(family, {option.technique}), misconception_bit(family, option.misconception)});
  }
  return mark_pieces(model, needs_of(family, question.techniques), marks);
}

Pieces order_pieces(const Family& family, const mastery::Model& model, const Question& question) {
  const auto wanted = order_marks(family, question);
  if (!wanted) return tl::unexpected(wanted.error());
  std::vector<mastery::Mark> marks;
  for (const OrderMark& mark : *wanted) {
    marks.push_back(
        {needs_of(family, {mark.technique}), misconception_bit(family, mark.misconception)});
  }
  return mark_pieces(model, needs_of(family, question.techniques), marks);
}

Pieces pieces_of(const Family& family, const mastery::Model& model, const Question& question) {
  if (question.kind == Kind::several) return several_pieces(family, model, question);
  if (question.kind == Kind::order) return order_pieces(family, model, question);
  return choice_pieces(family, model, question);
}

Result<mastery::Model> model_of(const Family& family) {
  std::vector<mastery::TechniqueSpec> techniques;
  for (const auto& one : family.techniques) {
    techniques.push_back({one.critical, one.weight, one.error_rate});
  }
  std::vector<mastery::MisconceptionSpec> misconceptions;
  for (const auto& one : family.misconceptions) {
    misconceptions.push_back({technique_index(family, one.rules_out), one.share});
  }
  return mastery::make_model({techniques, misconceptions});
}

}  // namespace

int technique_index(const Family& family, const Id& id) { return index_of(family.techniques, id); }

int misconception_index(const Family& family, const Id& id) {
  return index_of(family.misconceptions, id);
}

int question_index(const Family& family, const Id& id) { return index_of(family.questions, id); }

Result<std::vector<OrderMark>> order_marks(const Family& family, const Question& question) {
  const auto constraints = procedure::order_constraints(family, question);
  if (!constraints) return tl::unexpected(constraints.error());
  std::vector<OrderMark> marks;
  for (std::size_t n = 0; n < constraints->size(); ++n) {
    const auto& constraint = (*constraints)[n];
    auto mark = std::ranges::find_if(marks, [&constraint](const OrderMark& known) {
      return known.technique == constraint.technique &&
             known.misconception == constraint.misconception;
    });
    if (mark == marks.end()) {
      marks.push_back({constraint.technique, constraint.misconception, {}});
      mark = marks.end() - 1;
    }
    mark->constraints.push_back(static_cast<int>(n));
  }
  return marks;
}

Result<mastery::Bank> make_bank(const Family& family) {
  auto model = model_of(family);
  if (!model) return tl::unexpected(model.error());
  mastery::Bank bank{*std::move(model), {}};
  for (const Question& question : family.questions) {
    auto pieces = pieces_of(family, bank.model, question);
    if (!pieces) {
      Error error = pieces.error();
      error.where = "question " + question.id + ", " + error.where;
      return tl::unexpected(std::move(error));
    }
    bank.items.push_back({*std::move(pieces), static_cast<int>(question.kind)});
  }
  return bank;
}

}  // namespace rehale::check
