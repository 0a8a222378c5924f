// The content of Rehale as values: what the files under assets/ say, checked and resolved.
// Must not know where bytes come from, who answers, or how anything is drawn.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rehale::catalog {

using Id = std::string;  // lower-case words joined by '-': "breathe-out-first"

// Where a fact comes from: keys of library.json /sources, and how far it can be trusted.
struct Provenance {
  std::vector<Id> sources;  // "San16"; empty only when status is CP, M or D
  std::string status;       // R read, R2 second-hand, M memory, CP common practice, D derived
};

// ---- the virtual device ------------------------------------------------------------------------

struct Variable {
  Id id;                   // "cap"
  std::vector<Id> values;  // {"on","off"}; the first is the state at rest
};

struct Setting {
  Id variable, value;
};

// A precondition of an action. Broken: the technique it belongs to lapses.
struct Need {
  Id variable;
  std::vector<Id> any_of;  // allowed values
  Id technique;
  bool blocks = false;  // true: the action then has no effect (pressing with the cap on)
};

enum class DoseChange : unsigned char {
  none,
  load,    // one dose leaves the counter and is ready; one that was ready already is wasted
  inhale,  // the ready dose reaches the person
  waste,   // the ready dose is lost
};

// All effects whose `when` holds before the action happen, in order.
struct Effect {
  std::vector<Setting> when, set;
  DoseChange dose = DoseChange::none;
  Id technique;  // whose lapse it is when this wastes a dose; may be empty
};

struct Action {
  Id id;
  std::vector<Need> needs;
  std::vector<Effect> effects;
  std::vector<Id> pose;  // how the drawing looks when it is done; may be empty
};

// `before` must come before `after` within one dose.
struct OrderRule {
  Id id, before, after, technique;
  Id misconception;  // betrayed when broken; may be empty
  Provenance from;
};

// A number of the trade with its tolerance. pass_* is what counts as right.
struct Criterion {
  Id id;             // "inh_spray", as in the facts sheet
  Id action;         // may be empty (counters, re-checks)
  Id technique;      // may be empty: then for educators only, never marked
  std::string unit;  // "s", "L/min", "deg", "doses", "days"…
  std::optional<double> target_low, target_high, pass_low, pass_high;
  Provenance from;
};

// ---- what a person has, lacks or wrongly holds -------------------------------------------------

struct Technique {
  Id id;
  Id shared;  // the same habit in other families: key of library.json /shared_techniques
  bool critical = false;  // for the dose, by published checklists
  double weight = 1;      // (0,1]: how much of the dose hangs on it
  double error_rate = 0;  // published share of users who lack it, (0,1)
  Provenance from;
};

struct Misconception {
  Id id;
  Id rules_out;      // the technique that nobody who holds this rule has
  double share = 0;  // of those who lack that technique, how many hold this rule, (0,1)
  Id carried_from;   // family whose rule it is; may be empty
  Provenance from;
};

// ---- where the dose goes --------------------------------------------------------------------

// One habit as a change of a good puff, for the dose model. Absent habits: the model has no answer.
struct DoseHabit {
  Id habit;          // a technique that is lacking, or a misconception that is held
  Id change;         // one of k_dose_changes
  double value = 0;  // press-s, breath-s, hold-s, vents-covered; else 0
  Provenance from;
};
struct DoseModel {
  Id device;  // one of k_dose_devices; empty: no model for this family
  std::vector<DoseHabit> habits;
  std::vector<Id> sources;  // of the model itself, for the screen
};
inline constexpr std::string_view k_dose_changes[] = {"press-s",       "breath-s",    "hold-s",
                                                      "vents-covered", "not-shaken",  "tilted",
                                                      "breathed-into", "loaded-twice"};
inline constexpr std::string_view k_dose_devices[] = {
    "suspension-spray", "extrafine-spray", "chamber-spray", "soft-mist",
    "reservoir-powder", "lever-powder",    "cover-powder",  "capsule-powder"};

// ---- questions ---------------------------------------------------------------------------------

enum class Kind : unsigned char { one, several, order, picture, timing, numbers };

struct Option {
  Id id;
  bool right = false;
  Id technique;  // wrong: the technique whose lack it betrays; several: the technique it asks about
  Id misconception;         // wrong: the rule it betrays; may be empty
  std::vector<Id> pose;     // picture questions
  double from = 0, to = 0;  // timing (s) and numbers: the band [from, to); to = infinity allowed
};

struct NumberRange {
  std::string unit;
  double min = 0, max = 100, step = 1, start = 0;
};

struct Question {
  Id id;
  Kind kind = Kind::one;
  std::vector<Id> techniques;   // what a right answer needs
  std::vector<Option> options;  // bands for timing and numbers; empty for order
  std::vector<Id> actions;      // order: the cards
  std::vector<Id> pose;         // picture beside the question; may be empty
  Id criterion;                 // timing: which number it asks about
  NumberRange range;            // timing and numbers: what can be given
};

// ---- the timed run-through ---------------------------------------------------------------------

enum class Part : unsigned char { hands, breath };  // one does one thing at a time

// What a step is to the dose model.
enum class DoseRole : unsigned char {
  none,
  shake,        // mixes what is in the device
  press,        // fires it
  inhale,       // the breath that draws the dose
  inhale_weak,  // the same, chosen weak where it should be strong
  hold,         // breath held
  cover_vents,  // air holes covered from now on
  clear_vents,  // and free again
  into,         // breath out into the device
  tilt,         // tipped or shaken when loaded
};

// Something the person can choose in a run-through.
struct RunStep {
  Id id;  // the action that is done when it starts
  Part part = Part::hands;
  bool timed = false;  // it lasts: started and stopped
  Id ends;             // the action done when it stops; may be empty
  Id cut_short;  // done in place of `ends` when it stopped short of its criterion; may be empty
  DoseRole role = DoseRole::none;
  Id technique;    // that lapses when the step is wanted and left out; may be empty
  Id betrays;      // misconception that choosing it shows; may be empty
  Id from, until;  // as a lure: on offer once `from` was done (empty: from the start), until
                   // `until` was done (empty: to the end)
};

enum class Measure : unsigned char {
  lasts,           // s from start to stop
  after_start_of,  // s from the start of the nearest `of` to the step's start; before it: negative
  after_end_of,    // s from the end of the last `of` to the step's start
  count_in,        // how many of the step start within one `of`
};

// A criterion that a run-through can measure: only timing, never a breath.
struct TimedCriterion {
  Id criterion;           // of the family
  std::vector<Id> steps;  // measured at each of these
  Measure measure = Measure::lasts;
  std::vector<Id> of;    // see Measure
  double tolerance = 0;  // beyond `pass` that a finger is forgiven, in the criterion's unit
  Provenance from;       // of the tolerance
};

struct RunThrough {
  std::vector<RunStep> steps;  // as they stand on screen; none: the family has no run-through
  std::vector<Id> once;        // one dose done well
  std::vector<Id> twice;       // two, with what lies between; may be empty
  std::vector<TimedCriterion> timed;
};

struct Family {
  Id id;
  std::string speed;       // "slow" or "fast": the rule that divides the families
  int doses_at_start = 0;  // of the virtual device
  std::vector<Variable> variables;
  std::vector<Action> actions;  // 1–32
  std::vector<Id> ideal;        // one dose done well: breaks nothing, inhales one, wastes none
  std::vector<OrderRule> rules;
  std::vector<Criterion> criteria;
  RunThrough run_through;
  std::vector<Technique> techniques;          // 8–12
  std::vector<Misconception> misconceptions;  // 2–4
  std::vector<Question> questions;            // ≥ 28
  DoseModel dose;
};

// One looks question of "I don't know which I have".
struct FinderStep {
  struct Answer {
    Id id, family, next;  // family and next both empty: "ask someone"
  };
  Id id;
  std::vector<Answer> answers;
};

struct Library {
  std::vector<Id> families, languages, shared_techniques;
  std::map<Id, std::string> sources;  // key -> citation
  std::vector<Criterion> criteria;    // numbers all families share
  std::vector<FinderStep> finder;     // first step first
  // family -> content_id of the procedure and questions that were checked when the site was built
  // (ci/lib/first_part.mjs): for these very bytes load_family goes by that. Not in assets/.
  std::map<Id, std::string> checked;
};

// Sentences by path: "techniques/slow-breath/remedy". Missing ones are findings, never shown as
// keys.
class Texts {
 public:
  Texts() = default;
  explicit Texts(std::map<std::string, std::string> sentences) : sentences_(std::move(sentences)) {}
  // nullptr when there is none.
  [[nodiscard]] const std::string* find(const std::string& path) const {
    const auto found = sentences_.find(path);
    return found == sentences_.end() ? nullptr : &found->second;
  }
  [[nodiscard]] const std::map<std::string, std::string>& all() const { return sentences_; }

 private:
  std::map<std::string, std::string> sentences_;
};

// ---- loading -----------------------------------------------------------------------------------

// One thing that is not as it should be, and how to mend it.
struct Finding {
  std::string file;     // "assets/families/spray/questions.json"
  std::string pointer;  // RFC 6901: "/questions/3/options/1/technique"
  std::string rule;     // kebab-case: "unknown-technique"
  std::string remedy;   // what is there, what would be right
};

struct ContentFile {
  std::string path, bytes;
};

// value is there exactly when findings is empty.
template <class T>
struct Loaded {
  std::optional<T> value;
  std::vector<Finding> findings;
};

}  // namespace rehale::catalog
