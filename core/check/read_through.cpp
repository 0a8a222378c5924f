#include "core/check/read_through.h"

#include <algorithm>
#include <utility>

#include "core/check/family_bank.h"
#include "core/check/plan.h"

namespace rehale::check {

namespace {

class Reader {
 public:
  explicit Reader(const Course& course)
      : course_(course), diagnosis_(mastery::Diagnosis::of_finished(course.bank, k_plan)) {}

  Result<void> add(const Event& event) {
    const int question = question_index(course_.family, event.question);
    if (question < 0) {
      return fail("unknown-question", event.question, "this family has no question of that name");
    }
    switch (event.what) {
      case What::shown:
        return show(event, question);
      case What::answered:
        return answer(event, question);
      case What::retry_shown:
        practice_ = question;
        return {};
      case What::retry_answered:
        return practise(event, question);
      default:
        return out_of_turn(event, "a run begins once, and holds questions and answers");
    }
  }

  ReadThrough take() { return {std::move(given_), diagnosis_.verdict()}; }

 private:
  static tl::unexpected<Error> out_of_turn(const Event& event, const char* why) {
    return fail("out-of-turn", event.question, why);
  }

  [[nodiscard]] const catalog::Question& at(int question) const {
    return course_.family.questions[static_cast<std::size_t>(question)];
  }

  Result<void> show(const Event& event, int question) {
    if (open_ >= 0) return out_of_turn(event, "the question before it is still open");
    if (practice_ >= 0) return out_of_turn(event, "practice comes after the check");
    if (static_cast<int>(given_.size()) >= k_plan.most)
      return out_of_turn(event, "the check is over");
    if (std::ranges::find(given_, question, &Given::question) != given_.end()) {
      return out_of_turn(event, "a question is asked once in a run");
    }
    diagnosis_.ask(question);
    open_ = question;
    since_ms_ = event.at_ms;
    return {};
  }

  Result<void> answer(const Event& event, int question) {
    if (open_ != question) return out_of_turn(event, "only the question on show can be answered");
    auto marking = mark_answer(course_.family, at(question), event.answer);
    if (!marking) return tl::unexpected(marking.error());
    diagnosis_.answer(question, marking->columns);
    given_.push_back({question, event.answer, *std::move(marking), event.at_ms - since_ms_});
    open_ = -1;
    return {};
  }

  Result<void> practise(const Event& event, int question) {
    if (practice_ != question)
      return out_of_turn(event, "only the question on show can be answered");
    const auto marking = mark_answer(course_.family, at(question), event.answer);
    if (!marking) return tl::unexpected(marking.error());
    return {};
  }

  const Course& course_;
  mastery::Diagnosis diagnosis_;
  std::vector<Given> given_;
  int open_ = -1, practice_ = -1;
  double since_ms_ = 0;
};

}  // namespace

Result<ReadThrough> read_through(const Course& course, const Log& log) {
  if (log.empty()) return fail("log-empty", "event 0", "a run has at least its begin event");
  const auto begun = Run::is_begin(course, log.front());
  if (!begun) return tl::unexpected(begun.error());
  Reader reader(course);
  for (std::size_t n = 1; n < log.size(); ++n) {
    auto added =
        log[n].at_ms >= log[n - 1].at_ms
            ? reader.add(log[n])
            : fail("time-runs-back", "at_ms", "an event cannot be earlier than the one before it");
    if (added) continue;
    Error error = added.error();
    error.where = "event " + std::to_string(n) + ", " + error.where;
    return tl::unexpected(std::move(error));
  }
  return reader.take();
}

}  // namespace rehale::check
