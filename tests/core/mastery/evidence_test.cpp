// Response tables: bounds, flattening, and the recipes of facts/diagnosis.md 1.2.
#include "core/mastery/evidence.h"

#include <gtest/gtest.h>

#include <vector>

#include "tests/core/mastery/made.h"

namespace {

using namespace rehale::mastery;
using rehale::tests::sure;

TEST(Piece, rows_are_scaled_and_kept_from_the_ends) {
  const Piece piece = sure(make_piece(1, 3, {0, 0, 5, 3, 1, 0}));
  EXPECT_EQ(piece.chance(0, 0), .005);
  EXPECT_EQ(piece.chance(0, 1), .005);
  EXPECT_NEAR(piece.chance(0, 2), .99, 1e-15);
  EXPECT_NEAR(piece.chance(1, 0), .995 * .75, 1e-15);  // the others give, in proportion
  EXPECT_NEAR(piece.chance(1, 1), .995 * .25, 1e-15);
  EXPECT_EQ(piece.chance(1, 2), .005);
}

TEST(Piece, lifting_one_entry_may_push_another_below_and_that_is_lifted_too) {
  const Piece piece = sure(make_piece(0, 4, {0, .00501, .2, .79499}));
  double sum = 0;
  for (int c = 0; c < 4; ++c) {
    EXPECT_GE(piece.chance(0, c), .005);
    sum += piece.chance(0, c);
  }
  EXPECT_NEAR(sum, 1, 1e-15);
}

TEST(Piece, flattening_mixes_with_an_even_row) {
  const Piece piece = sure(make_piece(1, 2, {.9, .1, .2, .8}, .15));
  EXPECT_NEAR(piece.chance(0, 0), .85 * .9 + .075, 1e-15);
  EXPECT_NEAR(piece.chance(1, 0), .85 * .2 + .075, 1e-15);
}

TEST(Piece, groups_pack_the_bits_of_the_mask_lowest_first) {
  const Piece piece = sure(make_piece(0b10010, 2, {.9, .1, .8, .2, .7, .3, .6, .4}));
  EXPECT_EQ(piece.at, (std::vector<Bits>{0, 0b10, 0b10000, 0b10010}));
}

TEST(Piece, what_is_too_much_or_not_a_chance_is_said) {
  EXPECT_EQ(make_piece(0x7f, 2, std::vector<double>(256, .5)).error().code, "piece-size");
  EXPECT_EQ(make_piece(1, 9, std::vector<double>(18, .1)).error().code, "piece-size");
  EXPECT_EQ(make_piece(1, 2, {.5, .5}).error().code, "piece-size");
  EXPECT_EQ(make_piece(0, 2, {0, 0}).error().code, "piece-row");
  EXPECT_EQ(make_piece(0, 2, {-1, 2}).error().code, "piece-row");
  EXPECT_EQ(make_piece(0, 2, {.5, .5}, 2).error().code, "piece-row");
}

// Techniques 0, 1, 2; misconception 0 (bit 3) rules out technique 0.
struct Recipes : ::testing::Test {
  std::vector<TechniqueSpec> techniques = std::vector<TechniqueSpec>(3);
  std::vector<MisconceptionSpec> misconceptions = {{0, .3, 1}};
  Model model = sure(make_model(People{techniques, misconceptions}));
  Habits plain{.flatten = 0};

  static double at(const Piece& piece, Bits state, int column) {
    int group = 0;
    while (piece.at[static_cast<std::size_t>(group)] != (state & piece.mask)) ++group;
    return piece.chance(group, column);
  }
};

TEST_F(Recipes, who_has_it_picks_the_right_one_but_for_a_slip) {
  const OptionMeaning options[] = {{.betrays = 3}, {.right = true}, {.betrays = 0}, {.betrays = 0}};
  const Piece piece = sure(choice_piece(model, {.needs = 1, .options = options}, plain));
  EXPECT_EQ(piece.mask, 0b1001U);
  EXPECT_EQ(piece.columns, 5);
  EXPECT_NEAR(at(piece, 0b0001, 1), .98 * .9, 1e-15);
  EXPECT_NEAR(at(piece, 0b0001, 0), .98 * .1 / 3, 1e-15);
  EXPECT_NEAR(at(piece, 0b0001, 4), .02, 1e-15);
}

TEST_F(Recipes, who_holds_a_misconception_picks_what_betrays_it) {
  const OptionMeaning options[] = {{.betrays = 3}, {.right = true}, {.betrays = 0}, {.betrays = 0}};
  const Piece piece = sure(choice_piece(model, {.needs = 1, .options = options}, plain));
  EXPECT_NEAR(at(piece, 0b1000, 0), .95 * .70, 1e-15);
  EXPECT_NEAR(at(piece, 0b1000, 1), .95 * .08, 1e-15);
  EXPECT_NEAR(at(piece, 0b1000, 2), .95 * .11, 1e-15);
  // Who plainly lacks the technique spreads over all that point there (1.2: the rest uniform).
  EXPECT_NEAR(at(piece, 0b0000, 1), .80 * .15, 1e-15);
  for (const int option : {0, 2, 3}) EXPECT_NEAR(at(piece, 0, option), .80 * .85 / 3, 1e-15);
}

TEST_F(Recipes, the_option_that_betrays_what_is_lacking_takes_most_of_the_rest) {
  const OptionMeaning options[] = {{.right = true}, {.betrays = 1}, {.betrays = 2}, {.betrays = 2}};
  const Piece piece = sure(choice_piece(model, {.needs = 0b110, .options = options}, plain));
  const double sure_of_it = 1 - (.02 + (.20 - .02) / 2);              // one of two is lacking
  EXPECT_NEAR(at(piece, 0b100, 1), sure_of_it * .85 * 3 / 5, 1e-15);  // technique 1 is lacking
  EXPECT_NEAR(at(piece, 0b010, 1), sure_of_it * .85 * 1 / 7, 1e-15);  // technique 2 is
  EXPECT_NEAR(at(piece, 0b010, 2), sure_of_it * .85 * 3 / 7, 1e-15);
}

TEST_F(Recipes, not_sure_comes_more_from_who_lacks_it_and_less_from_who_holds_a_rule) {
  const OptionMeaning options[] = {{.betrays = 3}, {.right = true}, {.betrays = 0}};
  const Piece piece = sure(choice_piece(model, {.needs = 1, .options = options}));
  const double has = at(piece, 1, 3);
  const double lacks = at(piece, 0, 3);
  const double holds = at(piece, 0b1000, 3);
  EXPECT_LT(has, holds);
  EXPECT_LT(holds, lacks);
}

TEST_F(Recipes, a_mark_is_met_by_who_can_and_missed_by_who_holds_the_rule_against_it) {
  const Habits habits{.guess = .5, .flatten = 0};
  const Piece piece = sure(mark_piece(model, {.needs = 1, .misconception = 3}, habits));
  EXPECT_NEAR(at(piece, 1, k_met), .9, 1e-15);
  EXPECT_NEAR(at(piece, 0, k_met), .5, 1e-15);
  EXPECT_NEAR(at(piece, 0b1000, k_met), .08, 1e-15);
  EXPECT_NEAR(at(piece, 0b1000, k_missed), .92, 1e-15);
}

TEST_F(Recipes, not_sure_of_several_grows_with_what_is_lacking) {
  const Piece piece = sure(unsure_piece(model, 0b111, plain));
  EXPECT_NEAR(at(piece, 0b111, k_unsure), .02, 1e-15);
  EXPECT_NEAR(at(piece, 0b011, k_unsure), .02 + .18 / 3, 1e-15);
  EXPECT_NEAR(at(piece, 0b000, k_unsure), .20, 1e-15);
}

TEST_F(Recipes, a_question_that_makes_no_sense_is_said) {
  const OptionMeaning two_right[] = {{.right = true}, {.right = true}, {.betrays = 0}};
  EXPECT_EQ(choice_piece(model, {1, two_right}).error().code, "choice-meaning");
  const OptionMeaning unknown[] = {{.right = true}, {.betrays = 4}};
  EXPECT_EQ(choice_piece(model, {1, unknown}).error().code, "choice-meaning");
  const OptionMeaning fine[] = {{.right = true}, {.betrays = 0}};
  EXPECT_EQ(choice_piece(model, {0, fine}).error().code, "choice-meaning");
  EXPECT_EQ(choice_piece(model, {0b1000, fine}).error().code, "choice-meaning");
  EXPECT_EQ(choice_piece(model, {1, fine}, {.slip = .6, .guess = .5}).error().code,
            "choice-meaning");
  EXPECT_EQ(mark_piece(model, {.needs = 1, .misconception = 1}).error().code, "choice-meaning");
  EXPECT_EQ(unsure_piece(model, 0).error().code, "choice-meaning");
}

}  // namespace
