// facts/diagnosis.md 1.4: the 58 of 256 states of the fraction-subtraction table (CDM
// documentation, din.equivalent.class), and the conditions of Gu & Xu 2019 on the matrices of
// CDM::din_identifiability.
#include "core/mastery/identify.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "tests/core/mastery/made.h"

namespace {

using namespace rehale::mastery;
using rehale::tests::item_of;
using rehale::tests::right_wrong;
using rehale::tests::sure;
using rehale::tests::uniform_model;

std::vector<Bits> table(const std::vector<std::string>& rows) {
  std::vector<Bits> needs;
  for (const std::string& row : rows) {
    Bits need = 0;
    for (std::size_t k = 0; k < row.size(); ++k) need |= row[k] == '1' ? Bits{1} << k : 0;
    needs.push_back(need);
  }
  return needs;
}

TEST(ToldApart, fraction_subtraction_separates_58_of_256_states) {
  const std::vector<Bits> needs =
      table({"00010110", "00010010", "00010010", "01101010", "01010011", "00000010", "11000010",
             "00000010", "01000000", "01001011", "01001010", "00000011", "01011010", "01000010",
             "10000010", "01000010", "01001010", "01001110", "11101010", "01101010"});
  EXPECT_EQ(told_apart(needs, 8), 58U);
}

TEST(ToldApart, one_item_alone_for_each_bit_separates_all) {
  EXPECT_EQ(told_apart(table({"100", "010", "001"}), 3), 8U);
  EXPECT_EQ(told_apart(table({"110", "011", "101"}), 3), 5U);  // no state of one bit is seen
}

TEST(Estimable, matrices_of_the_documentation_get_their_verdicts) {
  const Estimable good = estimable(table({"100", "010", "001", "110", "101", "111", "111"}), 3);
  EXPECT_TRUE(good.all());
  const Estimable no_single = estimable(table({"100", "001", "110", "111", "111"}), 3);
  EXPECT_FALSE(no_single.alone);
  const Estimable alike = estimable(table({"100", "010", "001", "111", "111", "111", "111"}), 3);
  EXPECT_TRUE(alike.alone);
  EXPECT_TRUE(alike.thrice);
  EXPECT_FALSE(alike.distinct);
  const Estimable twice = estimable(table({"100", "010", "001", "110", "011"}), 3);
  EXPECT_FALSE(twice.thrice);
}

TEST(ToldApart, full_tables_tell_more_than_right_and_wrong) {
  Bank bank{uniform_model(3), {}};
  // Needs bits 0 and 1; the wrong options say which of them is lacking. Bit 2 has an item alone.
  bank.items.push_back(item_of(sure(make_piece(0b011, 3,
                                               {.2, .4, .4,  // neither
                                                .2, .2, .6,  // only bit 0: the other is betrayed
                                                .2, .6, .2,  // only bit 1
                                                .8, .1, .1}))));
  bank.items.push_back(item_of(right_wrong(0b100, .1, .2)));
  EXPECT_EQ(told_apart(bank), 8U);
  bank.items[0] = item_of(right_wrong(0b011, .1, .2));
  EXPECT_EQ(told_apart(bank), 4U);  // "both" or "not both", times bit 2
}

TEST(ToldApart, a_misconception_shows_by_the_option_it_betrays_and_not_by_right_and_wrong) {
  const std::vector<TechniqueSpec> techniques(2);
  const std::vector<MisconceptionSpec> held(1);
  Bank bank{sure(make_model(People{techniques, held})), {}};
  const OptionMeaning options[] = {{.right = true}, {.betrays = 2}, {.betrays = 0}, {.betrays = 0}};
  bank.items.push_back(item_of(sure(choice_piece(bank.model, {.needs = 1, .options = options}))));
  bank.items.push_back(item_of(right_wrong(0b10, .1, .2)));
  EXPECT_EQ(feasible_states(bank.model), 6U);
  EXPECT_EQ(told_apart(bank), 6U);
  bank.items[0] = item_of(right_wrong(0b01, .1, .2));
  EXPECT_EQ(told_apart(bank), 4U);
}

}  // namespace
