// One person's run in this tab: makes the events with their times, keeps the log, asks the core
// what it means. Must not know drawing or texts; the clock and the seed come in as arguments.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/advice/advice.h"
#include "core/check/run.h"

namespace rehale::screens {

class Session {
 public:
  struct Wish {
    std::string language;
    std::uint64_t seed = 0;
    int questions = 0;                    // 0: as many as the check needs
    std::vector<catalog::Id> focus = {};  // techniques of the family
  };
  // The course stays alive as long as the session.
  [[nodiscard]] Result<void> begin(std::shared_ptr<const check::Course> course, const Wish& wish,
                                   double now_ms);
  // A finished run made elsewhere, to look at. Errors: those of check::Run::replay, "unfinished".
  [[nodiscard]] Result<void> adopt(std::shared_ptr<const check::Course> course,
                                   const check::Log& log);
  void clear();

  [[nodiscard]] bool running() const { return run_.has_value(); }
  [[nodiscard]] const check::Run& run() const { return *run_; }
  [[nodiscard]] const catalog::Family& family() const { return course_->family; }
  [[nodiscard]] std::string family_id() const { return course_ ? course_->family.id : ""; }
  [[nodiscard]] std::string content() const { return course_ ? course_->content : ""; }

  // Puts the next question of the check on show; false: the check is over.
  bool show_next(double now_ms);
  [[nodiscard]] Result<void> answer(const check::Answer& answer, double now_ms);

  // After the check. advice() is made once it is over.
  [[nodiscard]] const advice::Advice& advice() const { return advice_; }
  // Puts a practice question about the technique on show; nothing left: false.
  bool show_practice(int technique, double now_ms);
  [[nodiscard]] Result<check::Marking> answer_practice(const check::Answer& answer, double now_ms);

  [[nodiscard]] int open_question() const { return run_ ? run_->open_question().value_or(-1) : -1; }
  [[nodiscard]] std::vector<catalog::Id> asked() const;

 private:
  [[nodiscard]] check::Event event(check::What what, int question, double now_ms) const;

  std::shared_ptr<const check::Course> course_;
  std::optional<check::Run> run_;
  advice::Advice advice_;
  std::vector<catalog::Id> recent_;
  double began_ms_ = 0;
};

}  // namespace rehale::screens
