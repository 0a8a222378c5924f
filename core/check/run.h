// One run of the self-check: a log of events folded into its state. Replaying a log gives the same
// state to the bit, native and WASM. Must not know texts, screens, clocks or random devices.
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/check/events.h"
#include "core/check/marking.h"
#include "core/mastery/diagnosis.h"

namespace rehale::check {

// A family made ready for runs. Keep it where it is while a Run points at it.
struct Course {
  catalog::Family family;
  mastery::Bank bank;
  std::string content;  // content id
};
[[nodiscard]] Result<Course> make_course(catalog::Family family, std::string content);

struct Given {
  int question = -1;  // index in the family
  Answer answer;
  Marking marking;
  double took_ms = 0;
};

class Run {
 public:
  // Errors: "begin-mismatch" when the event is no `begin` of this course.
  [[nodiscard]] static Result<void> is_begin(const Course& course, const Event& event);
  [[nodiscard]] static Result<Run> begin(const Course& course, const Event& event);

  // The whole log at once; `where` of an error names the event ("event 7"). Errors: "log-empty",
  // "begin-mismatch", and those of apply.
  [[nodiscard]] static Result<Run> replay(const Course& course, const Log& log);

  // Adds one event. Errors ("unknown-question", "out-of-turn", "time-runs-back", "answer-shape")
  // leave the run as it was.
  [[nodiscard]] Result<void> apply(const Event& event);

  // The next question of the check (index), or nothing: the check is over. Same seed, same
  // questions.
  [[nodiscard]] std::optional<int> next_question() const { return next_; }
  // A question that bears on a technique, for practice: a fresh one while there is one, then one of
  // the check once more; nothing when all were practised.
  [[nodiscard]] std::optional<int> practice_question(int technique) const;

  [[nodiscard]] std::optional<int> open_question() const { return open_; }  // shown, not answered
  [[nodiscard]] bool finished() const { return !next_ && !open_; }
  [[nodiscard]] const std::vector<Given>& given() const { return given_; }      // first tries
  [[nodiscard]] const std::vector<Given>& retries() const { return retries_; }  // after advice
  [[nodiscard]] mastery::Verdict verdict() const { return diagnosis_.verdict(); }
  [[nodiscard]] mastery::Stop stop() const { return stop_; }
  [[nodiscard]] const mastery::Posterior& posterior() const { return diagnosis_.posterior(); }
  [[nodiscard]] const Log& log() const { return log_; }
  [[nodiscard]] const Course& course() const { return *course_; }

  // The order in which the options or cards of a question stand on screen: a permutation of
  // [0, n), fixed by the run's seed and the question. Cards never start in a right order.
  [[nodiscard]] std::vector<int> shown_order(int question) const;

 private:
  Run(const Course& course, const Event& begin);
  Result<void> show(const Event& event, bool retry);
  Result<void> answer(const Event& event, bool retry);
  void choose_next();
  [[nodiscard]] bool seen(int question) const;  // in the check or in practice
  [[nodiscard]] bool practised(int question) const;

  const Course* course_;
  mastery::Diagnosis diagnosis_;
  Log log_;
  std::vector<int> recent_;
  std::vector<Given> given_, retries_;
  std::optional<int> next_, open_;
  bool open_is_retry_ = false;
  double open_since_ms_ = 0;
  mastery::Stop stop_ = mastery::Stop::go_on;
};

}  // namespace rehale::check
