#include "web/screens/session.h"

#include <algorithm>
#include <cmath>

namespace rehale::screens {

using check::What;

Result<void> Session::begin(std::shared_ptr<const check::Course> course, const Wish& wish,
                            double now_ms) {
  if (run_ && course_ && course && course_->family.id == course->family.id) recent_ = asked();
  else recent_.clear();
  run_.reset();
  course_ = std::move(course);
  began_ms_ = now_ms;
  check::Event begin{.what = What::begin};
  begin.family = course_->family.id;
  begin.seed = wish.seed;
  begin.content = course_->content;
  begin.language = wish.language;
  begin.recent = recent_;
  begin.questions = wish.questions;
  begin.focus = wish.focus;
  auto run = check::Run::begin(*course_, begin);
  if (!run) return tl::unexpected(run.error());
  run_.emplace(*std::move(run));
  return {};
}

Result<void> Session::adopt(std::shared_ptr<const check::Course> course, const check::Log& log) {
  clear();
  course_ = std::move(course);
  auto run = check::Run::replay(*course_, log);
  if (run && run->next_question()) run = fail("unfinished", "", "a question is left to ask");
  if (!run) {
    clear();
    return tl::unexpected(run.error());
  }
  run_.emplace(*std::move(run));
  advice_ = advice::advise(*run_);
  return {};
}

void Session::clear() {
  run_.reset();
  course_.reset();
  advice_ = {};
  recent_.clear();
}

check::Event Session::event(What what, int question, double now_ms) const {
  check::Event event{.what = what};
  event.at_ms = std::round(std::max(now_ms - began_ms_, run_->log().back().at_ms));
  event.question = course_->family.questions[static_cast<std::size_t>(question)].id;
  return event;
}

bool Session::show_next(double now_ms) {
  const auto next = run_->next_question();
  if (!next) {
    advice_ = advice::advise(*run_);
    return false;
  }
  return run_->apply(event(What::shown, *next, now_ms)).has_value();
}

Result<void> Session::answer(const check::Answer& answer, double now_ms) {
  check::Event given = event(What::answered, open_question(), now_ms);
  given.answer = answer;
  return run_->apply(given);
}

bool Session::show_practice(int technique, double now_ms) {
  const auto question = run_->practice_question(technique);
  return question && run_->apply(event(What::retry_shown, *question, now_ms)).has_value();
}

Result<check::Marking> Session::answer_practice(const check::Answer& answer, double now_ms) {
  check::Event given = event(What::retry_answered, open_question(), now_ms);
  given.answer = answer;
  const auto applied = run_->apply(given);
  if (!applied) return tl::unexpected(applied.error());
  return run_->retries().back().marking;
}

std::vector<catalog::Id> Session::asked() const {
  std::vector<catalog::Id> ids;
  if (!run_) return ids;
  for (const auto* list : {&run_->given(), &run_->retries()}) {
    for (const check::Given& given : *list) {
      ids.push_back(course_->family.questions[static_cast<std::size_t>(given.question)].id);
    }
  }
  return ids;
}

}  // namespace rehale::screens
