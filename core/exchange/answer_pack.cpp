#include "core/exchange/answer_pack.h"

#include <algorithm>
#include <cmath>

#include "core/catalog/lookup.h"

namespace rehale::exchange {

namespace {

using catalog::Id;
using catalog::Kind;
using catalog::Question;
using check::Answer;

tl::unexpected<Error> no_answer(const Question& question) {
  return fail("answer-shape", question.id, "this answer is none that the question allows");
}

tl::unexpected<Error> no_code(const Question& question) {
  return fail("code-shape", question.id, "the code holds an answer that the question has not");
}

bool is_amount(const Question& question) {
  return question.kind == Kind::timing || question.kind == Kind::numbers;
}

double at_step(const Question& question, double step) {
  return question.range.min + step * question.range.step;
}

Result<Packed> pack_amount(const Question& question, const Answer& answer) {
  if (!answer.picked.empty() || !std::isfinite(answer.amount)) return no_answer(question);
  const double step = std::round((answer.amount - question.range.min) / question.range.step);
  // Only when the very same number comes back.
  if (step >= 0 && step < 0x1p31 && at_step(question, step) == answer.amount) return Packed{step};
  return Packed{answer.amount, false};
}

Result<Packed> pack_ticks(const Question& question, const Answer& answer) {
  if (question.options.size() > k_most_ticks) return no_answer(question);
  double bits = 0;
  std::size_t known = 0;
  double bit = 1;
  for (const auto& option : question.options) {
    if (std::ranges::count(answer.picked, option.id) == 1) {
      bits += bit;
      ++known;
    }
    bit *= 2;
  }
  if (known != answer.picked.size()) return no_answer(question);
  return Packed{bits};
}

// The rank of an order among all orders of the cards: Lehmer's code.
Result<Packed> pack_order(const Question& question, const Answer& answer) {
  std::vector<Id> left = question.actions;
  if (answer.picked.size() != left.size() || left.size() > k_most_cards) return no_answer(question);
  double rank = 0;
  for (const Id& card : answer.picked) {
    const int place = catalog::index_of(left, card);
    if (place < 0) return no_answer(question);
    rank = rank * static_cast<double>(left.size()) + place;
    left.erase(left.begin() + place);
  }
  return Packed{rank};
}

Result<Answer> unpack_order(const Question& question, double rank) {
  std::size_t cards = question.actions.size();
  if (cards > k_most_cards) return no_code(question);
  std::vector<std::size_t> places(cards);
  auto rest = static_cast<std::uint64_t>(rank);
  for (std::size_t left = 1; left <= cards; ++left) {
    places[cards - left] = static_cast<std::size_t>(rest % left);
    rest /= left;
  }
  if (rest != 0) return no_code(question);
  Answer answer;
  std::vector<Id> left = question.actions;
  for (const std::size_t place : places) {
    answer.picked.push_back(left[place]);
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(place));
  }
  return answer;
}

Result<Answer> unpack_ticks(const Question& question, double packed) {
  const std::size_t options = question.options.size();
  auto bits = static_cast<std::uint64_t>(packed);
  if (options > k_most_ticks || (bits >> options) != 0) return no_code(question);
  Answer answer;
  for (const auto& option : question.options) {
    if ((bits & 1U) != 0) answer.picked.push_back(option.id);
    bits >>= 1U;
  }
  return answer;
}

Result<Answer> unpack_amount(const Question& question, Packed packed) {
  Answer answer;
  answer.amount = packed.whole ? at_step(question, packed.value) : packed.value;
  if (!std::isfinite(answer.amount)) return no_code(question);
  return answer;
}

}  // namespace

Result<Packed> pack_answer(const Question& question, const Answer& answer) {
  if (answer.unsure) return Packed{k_packed_unsure};
  if (is_amount(question)) return pack_amount(question, answer);
  if (question.kind == Kind::several) return pack_ticks(question, answer);
  if (question.kind == Kind::order) return pack_order(question, answer);
  const int option =
      answer.picked.size() == 1 ? catalog::index_of(question.options, answer.picked.front()) : -1;
  if (option < 0) return no_answer(question);
  return Packed{static_cast<double>(option)};
}

Result<Answer> unpack_answer(const Question& question, Packed packed) {
  if (packed.whole && packed.value == k_packed_unsure) {
    Answer answer;
    answer.unsure = true;
    return answer;
  }
  if (is_amount(question) && !packed.whole) return unpack_amount(question, packed);
  if (!packed.whole || packed.value < 0 || packed.value >= 0x1p53) return no_code(question);
  if (is_amount(question)) return unpack_amount(question, packed);
  if (question.kind == Kind::several) return unpack_ticks(question, packed.value);
  if (question.kind == Kind::order) return unpack_order(question, packed.value);
  if (packed.value >= static_cast<double>(question.options.size())) return no_code(question);
  Answer answer;
  answer.picked = {question.options[static_cast<std::size_t>(packed.value)].id};
  return answer;
}

}  // namespace rehale::exchange
