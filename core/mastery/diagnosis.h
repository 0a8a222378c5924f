// One run of questions: which to ask next, when to stop, what may be said in the end.
// Numbers only: must not know ids, texts, screens, clocks. Same seed and answers, same items.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/mastery/information.h"

namespace rehale::mastery {

enum class Aim : unsigned char {
  decision,  // settle the critical techniques and the misconceptions
  whole,     // learn the whole state
};

// Rules of facts/diagnosis.md 1.8 with its values.
struct Plan {
  Aim aim = Aim::decision;
  int fewest = 6, most = 12;    // items
  double has_it = .95;          // P >= has_it: has it
  double not_yet = .90;         // P <= 1 - not_yet: not yet
  double probe_nats = .05;      // told about a technique before "has it" may be said of it
  double useful_nats = .02;     // no item tells this much: stop
  double unprobed_boost = 1.3;  // for items that touch a critical technique not yet probed
  double suspect_low = .30, suspect_high = .90;  // a misconception to be confirmed
  int most_confirming = 4;   // items a misconception; by simulation: 2 finds too few of them
  double report_held = .70;  // P >= report_held, and confirmed: held
  double same_kind = .9;     // index factor for each of the last two items of the same kind
  double near = .05;         // items within this share of the best: the seed chooses
  double near_recent = .25;  // within this share a fresh item goes before a recent one
  int spare = 1;             // slots kept free beyond what coverage needs
  bool may_stop = true;      // false: always `most` items
  Bits must = 0;             // techniques that are probed as the critical ones are
};

enum class Label : unsigned char { has_it, not_yet, unsure };
enum class Held : unsigned char { held, not_held, unsure };

struct Verdict {
  struct Technique {
    double probability = 0;  // of having it
    bool probed = false;     // by real information, not merely named
    Label label = Label::unsure;
  };
  struct Misconception {
    double probability = 0;
    bool confirmed = false;  // at least two questions could betray it
    Held held = Held::unsure;
  };
  std::vector<Technique> techniques;
  std::vector<Misconception> misconceptions;
};

enum class Stop : unsigned char { go_on, decided, nothing_useful, longest, no_item_left };

struct Next {
  Stop stop = Stop::go_on;
  int item = -1;  // when stop is go_on
};

// A value: copy it to look ahead. The bank must outlive it. Replay = the same ask and answer calls.
//
// A critical technique is probed when the items asked told >= probe_nats about it, each counted
// when it was asked. Once other answers have decided a technique (outside 1 - not_yet … has_it)
// hardly any question can tell that much about it; one asked then counts by what it tells at even
// odds. The same holds for the techniques of `must`; where the items left do not suffice for all,
// these go first. They change what is asked, never what may be said: a verdict follows from the
// items and answers alone.
class Diagnosis {
 public:
  Diagnosis(const Bank& bank, const Plan& plan, std::uint64_t seed);
  // Starts from another posterior than the prior (a re-check after time and coaching).
  Diagnosis(const Bank& bank, const Plan& plan, std::uint64_t seed, Posterior start);
  // For a run that is over: the same ask and answer calls give the same verdict, to the bit, for a
  // third of the work. Then next, probability and worth_of may not be asked.
  [[nodiscard]] static Diagnosis of_finished(const Bank& bank, const Plan& plan);

  // The best item not yet asked, or why to stop. `recent`: items of earlier runs, put after equals.
  [[nodiscard]] Next next(std::span<const int> recent = {}) const;

  // Notes that the item is shown now (counts what it can tell), then what was answered: one column
  // a piece, -1 where a piece says nothing. Any item may be asked, chosen by next() or not; ask()
  // without answer() is a question left open.
  void ask(int item);
  void answer(int item, std::span<const int> columns);

  [[nodiscard]] Verdict verdict() const;
  [[nodiscard]] const Posterior& posterior() const { return posterior_; }
  [[nodiscard]] const std::vector<int>& asked() const { return asked_; }
  [[nodiscard]] double probability(int index) const { return sums_.marginal(index); }
  // Nats told so far about a critical technique or one of `must`; 0 for others.
  [[nodiscard]] double told(int technique) const {
    return told_[static_cast<std::size_t>(technique)];
  }
  // What next() weighs, for tests and for "why this question?".
  [[nodiscard]] Worth worth_of(int item) const;

 private:
  struct Candidate;
  struct Survey;
  Diagnosis(const Bank& bank, const Plan& plan);  // of_finished

  [[nodiscard]] Bits unprobed(Bits among) const;
  [[nodiscard]] Bits to_probe() const;
  [[nodiscard]] bool in_grey_zone(int technique) const;
  [[nodiscard]] bool decided() const;
  [[nodiscard]] Bits suspected() const;
  [[nodiscard]] double told_now(const Item& item, const Worth& worth, int technique) const;
  [[nodiscard]] Survey survey() const;
  void plan_cover_of(Survey& survey, Bits open, Bits wanted) const;
  [[nodiscard]] double index_of(const Candidate& candidate, Bits unprobed) const;
  [[nodiscard]] Stop stop_now(const Survey& survey) const;
  [[nodiscard]] int choose(const std::vector<Candidate>& list, std::span<const int> recent) const;

  const Bank* bank_;
  Plan plan_;
  std::uint64_t seed_;
  bool finished_ = false;  // sums_ hold only what the question asked last is about
  Posterior posterior_;
  SupersetSums sums_;
  std::vector<int> asked_;
  std::array<double, k_max_bits> told_{};                // nats told so far about each technique
  std::array<int, k_max_misconceptions> asked_about_{};  // items that could betray it
  std::array<int, k_max_misconceptions> confirming_{};   // of these, asked while it was suspected
};

}  // namespace rehale::mastery
