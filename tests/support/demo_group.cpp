#include "tests/support/demo_group.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/rng.h"
#include "core/check/family_bank.h"
#include "core/mastery/evidence.h"

namespace rehale::support {

namespace {

using catalog::Kind;
using catalog::Option;
using catalog::Question;
using mastery::Bits;

struct Person {
  const check::Course* course = nullptr;
  Bits state = 0;
  std::uint32_t id = 0;
  bool other_language = false, helped = false;
};

Bits drawn_state(const mastery::Model& model, Rng& rng) {
  double left = rng.uniform();
  Bits state = 0;
  while (state + 1 < model.prior.size() && left >= model.prior[state]) left -= model.prior[state++];
  return state;
}

int drawn_column(const mastery::Piece& piece, Bits state, Rng& rng) {
  int group = 0;
  while (piece.at[static_cast<std::size_t>(group)] != (state & piece.mask)) ++group;
  double left = rng.uniform();
  int column = 0;
  while (column + 1 < piece.columns && left >= piece.chance(group, column)) {
    left -= piece.chance(group, column++);
  }
  return column;
}

// An amount on the question's own steps within a band.
double amount_in(const Question& question, const Option& band, Rng& rng) {
  const auto& range = question.range;
  const double low = std::ceil((std::max(band.from, range.min) - range.min) / range.step);
  const double high = std::floor((std::min(band.to, range.max) - range.min) / range.step);
  double step =
      low + static_cast<double>(rng.below(static_cast<std::uint64_t>(std::max(1.0, high - low))));
  return range.min + step * range.step;
}

// All orders of a question's cards by what they would be marked with; made once.
using Orders = std::map<std::vector<int>, check::Answer>;
const Orders& orders_of(const check::Course& course, const Question& question) {
  static std::map<std::string, Orders> known;
  Orders& orders = known[course.family.id + "/" + question.id];
  if (!orders.empty()) return orders;
  check::Answer answer;
  answer.picked = question.actions;
  std::ranges::sort(answer.picked);
  do {
    const auto marking = check::mark_answer(course.family, question, answer);
    if (marking) orders.try_emplace(marking->columns, answer);
  } while (std::ranges::next_permutation(answer.picked).found);
  return orders;
}

// The order whose marks differ least from those drawn: not every set of slips can be laid.
check::Answer nearest_order(const Orders& orders, const std::vector<int>& columns) {
  const check::Answer* best = nullptr;
  std::size_t least = columns.size() + 1;
  for (const auto& [marks, answer] : orders) {
    std::size_t off = 0;
    for (std::size_t n = 0; n < marks.size(); ++n) off += marks[n] != columns[n] ? 1U : 0U;
    if (off >= least) continue;
    least = off;
    best = &answer;
  }
  return best == nullptr ? check::Answer{} : *best;
}

check::Answer answer_of(const Person& person, int index, Rng& rng) {
  const check::Course& course = *person.course;
  const auto place = static_cast<std::size_t>(index);
  const Question& question = course.family.questions[place];
  std::vector<int> columns;
  for (const auto& piece : course.bank.items[place].pieces) {
    columns.push_back(drawn_column(piece, person.state, rng));
  }
  check::Answer answer;
  if (question.kind == Kind::several || question.kind == Kind::order) {
    answer.unsure = columns.front() == mastery::k_unsure;
    if (answer.unsure) return answer;
    if (question.kind == Kind::order) return nearest_order(orders_of(course, question), columns);
    for (std::size_t n = 0; n < question.options.size(); ++n) {
      const bool met = columns[n + 1] == mastery::k_met;
      if (question.options[n].right == met) answer.picked.push_back(question.options[n].id);
    }
    return answer;
  }
  const auto column = static_cast<std::size_t>(columns.front());
  answer.unsure = column == question.options.size();
  if (answer.unsure) return answer;
  const Option& option = question.options[column];
  if (question.kind == Kind::timing || question.kind == Kind::numbers) {
    answer.amount = amount_in(question, option, rng);
  } else {
    answer.picked = {option.id};
  }
  return answer;
}

check::Log check_of(const Person& person, const std::string& language,
                    const std::vector<catalog::Id>& recent, Rng& rng) {
  check::Event begin{.what = check::What::begin};
  begin.family = person.course->family.id;
  begin.content = person.course->content;
  begin.language = language;
  begin.seed = rng.next();
  begin.recent = recent;
  check::Run run = *check::Run::begin(*person.course, begin);
  double at_ms = 0;
  while (const auto next = run.next_question()) {
    const auto& id = person.course->family.questions[static_cast<std::size_t>(*next)].id;
    check::Event shown{.what = check::What::shown, .at_ms = at_ms += 300, .question = id};
    at_ms += 100 * static_cast<double>(25 + rng.below(250));
    check::Event answered{.what = check::What::answered, .at_ms = at_ms, .question = id};
    answered.answer = answer_of(person, *next, rng);
    if (!run.apply(shown) || !run.apply(answered)) break;
  }
  return run.log();
}

Person make_person(const DemoPlan& plan, const check::Course& course, Rng& rng) {
  Person person{&course, drawn_state(course.bank.model, rng)};
  person.id = static_cast<std::uint32_t>(rng.next());
  person.other_language = rng.uniform() < plan.other_share;
  person.helped = rng.uniform() < .15;
  const int planted = check::technique_index(course.family, plan.planted_technique);
  if (course.family.id == plan.planted_family && person.other_language && planted >= 0) {
    const bool lacks = rng.uniform() < plan.planted_share;
    person.state &= ~mastery::bit(planted);
    if (!lacks) person.state |= mastery::bit(planted);
    const auto& model = course.bank.model;
    for (int b = 0; b < model.misconceptions; ++b) {  // a rule and its technique never go together
      const bool against = model.rules_out[static_cast<std::size_t>(b)] == planted;
      if (against && !lacks) person.state &= ~mastery::bit(model.techniques + b);
    }
  }
  return person;
}

// In the family's order, as codes keep them.
std::vector<catalog::Id> asked_in(const check::Log& log, const catalog::Family& family) {
  std::vector<catalog::Id> asked;
  for (const Question& question : family.questions) {
    if (std::ranges::find(log, question.id, &check::Event::question) != log.end()) {
      asked.push_back(question.id);
    }
  }
  return asked;
}

void coach(const DemoPlan& plan, Person& person, Rng& rng) {
  const auto& model = person.course->bank.model;
  for (int k = 0; k < model.techniques; ++k) {
    if ((person.state & mastery::bit(k)) != 0 || rng.uniform() >= plan.learned) continue;
    person.state |= mastery::bit(k);
    for (int b = 0; b < model.misconceptions; ++b) {
      if (model.rules_out[static_cast<std::size_t>(b)] == k) {
        person.state &= ~mastery::bit(model.techniques + b);
      }
    }
  }
}

}  // namespace

void demo_group(const DemoPlan& plan, const std::vector<const check::Course*>& courses,
                const std::function<void(const check::Course&, const DemoResult&)>& take) {
  for (std::size_t n = 0; n < plan.people; ++n) {
    Rng rng(plan.seed * 0x9e3779b97f4a7c15ULL + n);
    Person person = make_person(plan, *courses[n % courses.size()], rng);
    const std::string language = person.other_language ? plan.other_language : "en";
    DemoResult result{{.page = "demo", .helped = person.helped, .made_up = true}, {}};
    result.head.day = plan.today - 60 - static_cast<Day>(rng.below(60));
    result.head.person = person.id;
    result.head.confidence = static_cast<int>(rng.below(5));
    result.log = check_of(person, language, {}, rng);
    take(*person.course, result);
    if (rng.uniform() >= plan.back_again) continue;
    coach(plan, person, rng);
    const auto recent = asked_in(result.log, person.course->family);
    result.head.again = true;
    result.head.day += 26 + static_cast<Day>(rng.below(8));
    result.log = check_of(person, language, recent, rng);
    take(*person.course, result);
  }
}

}  // namespace rehale::support
