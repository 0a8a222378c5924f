// What an answer says about a person: response tables over the few bits a question touches.
// Numbers only: must not know what a question asks or how it is shown.
#pragma once

#include <span>
#include <vector>

#include "core/mastery/model.h"

namespace rehale::mastery {

inline constexpr int k_max_group_bits = 6;
inline constexpr int k_max_columns = 8;
inline constexpr double k_least_chance = .005;  // no tap can rule a state out

// One piece of evidence: P(column | group). A group is the state of the bits in `mask`, packed, the
// lowest bit first; a column is what was answered. Made by make_piece and the recipes below only.
struct Piece {
  Bits mask = 0;
  int groups = 0, columns = 0;
  std::vector<double> rows;  // [group][column], each row sums to 1
  std::vector<Bits> at;      // group -> its bits in a state
  // Made ready for superset sums: the rows, [group][stride], and their sums T ln T, [group].
  std::vector<double> lift, lift_negentropy;

  [[nodiscard]] double chance(int group, int column) const;
  [[nodiscard]] int stride() const { return (columns + 1) / 2 * 2; }  // even
};

// rows: 2^|mask| x columns, none negative, each row with a positive sum (scaled to 1, then kept
// within [k_least_chance, 1 - k_least_chance]). flatten in [0,1]: T <- (1-flatten) T +
// flatten/columns. Errors: "piece-size" (more than 6 bits, columns not in 2…8, wrong number of
// entries), "piece-row".
[[nodiscard]] Result<Piece> make_piece(Bits mask, int columns, std::vector<double> rows,
                                       double flatten = 0);

// How people answer, until real answers calibrate it. Start values: facts/diagnosis.md 1.2, 1.3;
// the three on "I'm not sure" and `telling` are [design].
struct Habits {
  double slip = .10;        // has all it needs, yet does not pick the right one
  double guess = .15;       // lacks something, yet picks the right one
  double held_right = .08;  // holds a misconception that an option betrays, yet picks the right one
  double held_pull = .70;   // holds it and picks the option that betrays it
  double telling = 3;       // how much likelier a wrong option is that betrays what is lacking
  double unsure_has = .02, unsure_lacks = .20, unsure_held = .05;  // "I'm not sure"
  double flatten = .15;                                            // until calibrated
};

struct OptionMeaning {
  bool right = false;
  int betrays = -1;  // wrong: bit of the technique whose lack, or of the misconception, it shows
};

// One of several (also pictures, timing bands, number bands): what a right answer needs, and what
// each option means. At most 7 options, exactly one right.
struct Choice {
  Bits needs = 0;  // technique bits, at least one
  std::span<const OptionMeaning> options;
};

// Columns: the options in their order, then "I'm not sure" (column options.size()).
// Errors as make_piece, and "choice-meaning".
[[nodiscard]] Result<Piece> choice_piece(const Model& model, const Choice& choice,
                                         const Habits& habits = {});

// One mark of a question that gives several: an option of several-of-several, an order rule, a
// criterion of a run-through. `misconception` is the bit it betrays when missed, or -1.
struct Mark {
  Bits needs = 0;
  int misconception = -1;
};
enum : int { k_met = 0, k_missed = 1 };  // columns of a mark
// guess is the chance to meet it by luck: .5 for ticking an option or for one pair in an order.
[[nodiscard]] Result<Piece> mark_piece(const Model& model, const Mark& mark,
                                       const Habits& habits = {.guess = .5});

// Whether a question with several marks was answered at all: "I'm not sure" is one event, not one a
// mark. The more of `needs` is lacking, the likelier. First piece of such an item.
enum : int { k_answered = 0, k_unsure = 1 };
[[nodiscard]] Result<Piece> unsure_piece(const Model& model, Bits needs, const Habits& habits = {});

// A question: its pieces (one for a choice) are independent given the state.
struct Item {
  std::vector<Piece> pieces;
  int kind = 0;  // any number; the same kind twice running is put off a little

  [[nodiscard]] Bits touches() const;  // union of the masks
};

// What a run asks from. Items are named by their place.
struct Bank {
  Model model;
  std::vector<Item> items;
};

}  // namespace rehale::mastery
