// The recipes for response tables: how people who have, lack or hold something answer.
// facts/diagnosis.md 1.2; design.md "Diagnosis".
#include <bit>
#include <cstddef>
#include <string>

#include "core/mastery/evidence.h"

namespace rehale::mastery {
namespace {

// What a person is, seen by one question.
struct Person {
  Bits lacks = 0;  // needed techniques not there
  Bits holds = 0;  // misconceptions that an option betrays
  Bits needs = 0;

  // A held misconception rules its technique out, whatever the group says.
  [[nodiscard]] bool ready() const { return lacks == 0 && holds == 0; }
};

double unsure_chance(const Person& person, const Habits& habits) {
  if (person.holds != 0) return habits.unsure_held;
  const double share = static_cast<double>(std::popcount(person.lacks)) /
                       static_cast<double>(std::popcount(person.needs));
  return habits.unsure_has + (habits.unsure_lacks - habits.unsure_has) * share;
}

Bits misconception_bits(const Model& model) {
  return (bit(model.bits()) - 1) & ~(bit(model.techniques) - 1);
}

bool sound(const Habits& habits) {
  const double all[] = {habits.slip,       habits.guess,        habits.held_right, habits.held_pull,
                        habits.unsure_has, habits.unsure_lacks, habits.unsure_held};
  for (const double share : all) {
    if (!(share >= 0 && share < 1)) return false;
  }
  return habits.telling >= 1 && habits.telling <= 100 &&
         habits.held_right + habits.held_pull <= 1 && 1 - habits.slip > habits.guess &&
         1 - habits.slip > habits.held_right;
}

// How strongly a wrong option draws somebody who lacks something.
double draw(const Model& model, const OptionMeaning& option, const Person& person,
            const Habits& habits) {
  int technique = option.betrays;
  if (technique >= model.techniques) {
    technique = model.rules_out[static_cast<std::size_t>(technique - model.techniques)];
  }
  const bool tells = technique >= 0 && (person.lacks & bit(technique)) != 0;
  return tells ? habits.telling : 1;
}

// Gives `share` to the wrong options for which weight(option) is more than 0, in proportion.
template <class Weight>
void spread(std::span<const OptionMeaning> options, std::span<double> row, double share,
            Weight weight) {
  double sum = 0;
  for (const OptionMeaning& option : options) {
    if (!option.right) sum += weight(option);
  }
  for (std::size_t o = 0; o < options.size(); ++o) {
    if (!options[o].right && sum > 0) row[o] += share * weight(options[o]) / sum;
  }
}

// Chances of the options alone, before "I'm not sure" takes its part.
void fill_options(const Model& model, const Choice& choice, const Person& person,
                  const Habits& habits, std::span<double> row) {
  const auto betrays_held = [&](const OptionMeaning& option) {
    return option.betrays >= 0 && (person.holds & bit(option.betrays)) != 0 ? 1.0 : 0.0;
  };
  double right = 1 - habits.slip;
  if (person.holds != 0) {
    right = habits.held_right;
    spread(choice.options, row, habits.held_pull, betrays_held);
    spread(choice.options, row, 1 - right - habits.held_pull,
           [&](const OptionMeaning& option) { return 1 - betrays_held(option); });
  } else if (!person.ready()) {
    right = habits.guess;
    spread(choice.options, row, 1 - right,
           [&](const OptionMeaning& option) { return draw(model, option, person, habits); });
  } else {
    spread(choice.options, row, habits.slip, [](const OptionMeaning&) { return 1.0; });
  }
  for (std::size_t o = 0; o < choice.options.size(); ++o) {
    if (choice.options[o].right) row[o] = right;
  }
}

bool understood(const Model& model, const Choice& choice) {
  int right = 0;
  for (const OptionMeaning& option : choice.options) {
    right += option.right ? 1 : 0;
    if (option.betrays >= model.bits() || (option.right && option.betrays >= 0)) return false;
  }
  return right == 1 && choice.needs != 0 && choice.needs < bit(model.techniques) &&
         choice.options.size() >= 2 && choice.options.size() < k_max_columns;
}

Person person_in_group(Bits mask, Bits group, Bits needs) {
  Bits state = 0;
  Bits place = 1;
  for (Bits left = mask; left != 0; left &= left - 1, place <<= 1U) {
    if ((group & place) != 0) state |= left & (~left + 1);
  }
  return {needs & ~state, state & ~needs, needs};
}

// Builds a piece row by row; fill(person, row) must not depend on anything else.
template <class Fill>
Result<Piece> build(Bits needs, Bits mask, int columns, double flatten, Fill fill) {
  if (std::popcount(mask) > k_max_group_bits) {
    return fail("piece-size", "piece", "touches more than 6 bits; ask about less at a time");
  }
  const auto width = static_cast<std::size_t>(columns);
  const std::size_t groups = std::size_t{1} << static_cast<unsigned>(std::popcount(mask));
  std::vector<double> rows(groups * width, 0);
  for (std::size_t group = 0; group < groups; ++group) {
    const Person person = person_in_group(mask, static_cast<Bits>(group), needs);
    fill(person, std::span<double>(rows.data() + group * width, width));
  }
  return make_piece(mask, columns, std::move(rows), flatten);
}

}  // namespace

Result<Piece> choice_piece(const Model& model, const Choice& choice, const Habits& habits) {
  if (!understood(model, choice) || !sound(habits)) {
    return fail("choice-meaning", "choice",
                "one right option of 2 to 7, wrong ones betraying bits of the model, techniques "
                "needed, habits with 1 - slip above guess would be right");
  }
  Bits mask = choice.needs;
  for (const OptionMeaning& option : choice.options) {
    if (option.betrays >= 0) mask |= bit(option.betrays) & misconception_bits(model);
  }
  const int columns = static_cast<int>(choice.options.size()) + 1;
  return build(choice.needs, mask, columns, habits.flatten,
               [&](const Person& person, std::span<double> row) {
                 fill_options(model, choice, person, habits, row);
                 const double unsure = unsure_chance(person, habits);
                 for (double& chance : row) chance *= 1 - unsure;
                 row.back() = unsure;
               });
}

Result<Piece> mark_piece(const Model& model, const Mark& mark, const Habits& habits) {
  const bool known = mark.needs != 0 && mark.needs < bit(model.techniques) &&
                     mark.misconception < model.bits() &&
                     (mark.misconception < 0 || mark.misconception >= model.techniques);
  if (!known || !sound(habits)) {
    return fail("choice-meaning", "mark",
                "techniques needed, a misconception of the model or none, habits with 1 - slip "
                "above guess would be right");
  }
  const Bits mask = mark.needs | (mark.misconception < 0 ? 0 : bit(mark.misconception));
  return build(mark.needs, mask, 2, habits.flatten,
               [&](const Person& person, std::span<double> row) {
                 row[k_met] = person.holds != 0 ? habits.held_right
                              : person.ready()  ? 1 - habits.slip
                                                : habits.guess;
                 row[k_missed] = 1 - row[k_met];
               });
}

Result<Piece> unsure_piece(const Model& model, Bits needs, const Habits& habits) {
  if (needs == 0 || needs >= bit(model.techniques) || !sound(habits)) {
    return fail("choice-meaning", "unsure", "techniques of the model must be needed");
  }
  return build(needs, needs, 2, habits.flatten, [&](const Person& person, std::span<double> row) {
    row[k_unsure] = unsure_chance(person, habits);
    row[k_answered] = 1 - row[k_unsure];
  });
}

}  // namespace rehale::mastery
