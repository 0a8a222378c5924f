#include "core/check/run.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "core/base/hash.h"
#include "core/base/rng.h"
#include "core/check/family_bank.h"
#include "core/check/plan.h"

namespace rehale::check {

namespace {

bool is_begin_of(const Course& course, const Event& event) {
  return event.what == What::begin && event.family == course.family.id &&
         event.content == course.content;
}

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// Cards must not lie in a right order before anybody has touched them.
void unsettle_cards(const Course& course, const catalog::Question& question,
                    std::vector<int>& order) {
  for (std::size_t turn = 0; turn < order.size(); ++turn) {
    Answer laid;
    for (const int card : order) laid.picked.push_back(question.actions[at(card)]);
    const auto marking = mark_answer(course.family, question, laid);
    if (!marking || !marking->right) return;
    std::rotate(order.begin(), order.begin() + 1, order.end());
  }
}

}  // namespace

Result<Course> make_course(catalog::Family family, std::string content) {
  auto bank = make_bank(family);
  if (!bank) return tl::unexpected(bank.error());
  return Course{std::move(family), *std::move(bank), std::move(content)};
}

Run::Run(const Course& course, const Event& begin)
    : course_(&course),
      diagnosis_(course.bank, plan_of(course.family, begin), begin.seed),
      log_{begin} {
  for (const Id& id : begin.recent) {
    const int question = question_index(course.family, id);
    if (question >= 0) recent_.push_back(question);  // a question since withdrawn: no matter
  }
  choose_next();
}

Result<void> Run::is_begin(const Course& course, const Event& event) {
  if (is_begin_of(course, event)) {
    if (can_be_set(course.family, event)) return {};
    return fail("begin-mismatch", "event 0",
                "expected 6 to 12 questions or 0, and a focus on techniques of " +
                    course.family.id + ", each once");
  }
  return fail("begin-mismatch", "event 0",
              "expected the begin of a run of " + course.family.id + " with content " +
                  course.content + ", found family '" + event.family + "', content '" +
                  event.content + "'");
}

Result<Run> Run::begin(const Course& course, const Event& event) {
  const auto begun = is_begin(course, event);
  if (!begun) return tl::unexpected(begun.error());
  return Run(course, event);
}

Result<Run> Run::replay(const Course& course, const Log& log) {
  if (log.empty()) return fail("log-empty", "event 0", "a run has at least its begin event");
  auto run = begin(course, log.front());
  if (!run) return run;
  for (std::size_t n = 1; n < log.size(); ++n) {
    const auto applied = run->apply(log[n]);
    if (!applied) {
      Error error = applied.error();
      error.where = "event " + std::to_string(n) + ", " + error.where;
      return tl::unexpected(std::move(error));
    }
  }
  return run;
}

Result<void> Run::apply(const Event& event) {
  if (!(event.at_ms >= log_.back().at_ms)) {
    return fail("time-runs-back", "at_ms", "an event cannot be earlier than the one before it");
  }
  switch (event.what) {
    case What::begin:
      return fail("out-of-turn", "what", "a run begins once");
    case What::shown:
      return show(event, false);
    case What::answered:
      return answer(event, false);
    case What::retry_shown:
      return show(event, true);
    case What::retry_answered:
      return answer(event, true);
  }
  return fail("out-of-turn", "what", "an event of no known kind");
}

Result<void> Run::show(const Event& event, bool retry) {
  const int question = question_index(course_->family, event.question);
  if (question < 0) {
    return fail("unknown-question", event.question, "this family has no question of that name");
  }
  if (!retry && (open_ || !next_)) {
    return fail("out-of-turn", event.question,
                open_ ? "the question before it is still open" : "the check is over");
  }
  if (retry && next_) return fail("out-of-turn", event.question, "practice comes after the check");
  if (!retry && seen(question)) {
    return fail("out-of-turn", event.question, "a question is asked once in a run");
  }
  if (!retry) {
    diagnosis_.ask(question);
    next_.reset();
  }
  open_ = question;
  open_is_retry_ = retry;
  open_since_ms_ = event.at_ms;
  log_.push_back(event);
  return {};
}

Result<void> Run::answer(const Event& event, bool retry) {
  const int question = question_index(course_->family, event.question);
  if (!open_ || *open_ != question || open_is_retry_ != retry) {
    return fail("out-of-turn", event.question, "only the question on show can be answered");
  }
  auto marking =
      mark_answer(course_->family, course_->family.questions[at(question)], event.answer);
  if (!marking) return tl::unexpected(marking.error());
  Given given{question, event.answer, *std::move(marking), event.at_ms - open_since_ms_};
  open_.reset();
  log_.push_back(event);
  if (retry) {
    retries_.push_back(std::move(given));
    return {};
  }
  diagnosis_.answer(question, given.marking.columns);
  given_.push_back(std::move(given));
  choose_next();
  return {};
}

void Run::choose_next() {
  const mastery::Next next = diagnosis_.next(recent_);
  stop_ = next.stop;
  if (next.stop == mastery::Stop::go_on) next_ = next.item;
}

bool Run::seen(int question) const {
  const auto is_it = [question](const Given& given) { return given.question == question; };
  return std::ranges::any_of(given_, is_it) || practised(question);
}

bool Run::practised(int question) const {
  return std::ranges::find(retries_, question, &Given::question) != retries_.end();
}

std::optional<int> Run::practice_question(int technique) const {
  const Id& id = course_->family.techniques[at(technique)].id;
  // Fresh questions first, of these the ones that ask about least besides.
  const auto rank = [this](int n) {
    return std::pair{seen(n), course_->family.questions[at(n)].techniques.size()};
  };
  std::optional<int> best;
  for (int n = 0; n < static_cast<int>(course_->family.questions.size()); ++n) {
    const auto& about = course_->family.questions[at(n)].techniques;
    if (std::ranges::find(about, id) == about.end() || practised(n)) continue;
    if (!best || rank(n) < rank(*best)) best = n;
  }
  return best;
}

std::vector<int> Run::shown_order(int question) const {
  const catalog::Question& asked = course_->family.questions[at(question)];
  const bool cards = asked.kind == catalog::Kind::order;
  std::vector<int> order(cards ? asked.actions.size() : asked.options.size());
  std::iota(order.begin(), order.end(), 0);
  Rng rng(log_.front().seed ^ fnv1a(asked.id));
  shuffle(order, rng);
  if (cards) unsettle_cards(*course_, asked, order);
  return order;
}

}  // namespace rehale::check
