// What the content says of habits and doses, through the model: shipped families and words.
#include "core/advice/dose_word.h"

#include <gtest/gtest.h>

#include "tests/support/courses.h"
#include "tests/support/fixture.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;

const catalog::Family& family(const char* id) { return support::shipped_course(id)->family; }

TEST(DoseWord, catalog_and_model_know_the_same_devices) {
  for (const auto& device : catalog::k_dose_devices) EXPECT_TRUE(dose::find_device(device));
  EXPECT_EQ(std::size(catalog::k_dose_devices), static_cast<std::size_t>(dose::k_devices));
}

TEST(DoseWord, every_habit_in_the_shipped_content_is_a_puff_within_range) {
  for (const auto& id : support::shipped_families()) {
    const auto* course = support::shipped_course(id);
    ASSERT_NE(course, nullptr);
    EXPECT_FALSE(course->family.dose.habits.empty()) << id;
    for (const auto& habit : course->family.dose.habits) {
      const auto puff = advice::puff_with(course->family, {habit.habit});
      ASSERT_TRUE(puff) << id << " " << habit.habit;
      const auto compared = dose::compare(*puff, *advice::good_puff(course->family));
      ASSERT_TRUE(compared) << id << " " << habit.habit;
      EXPECT_LT(compared->share.likely, 1) << id << " " << habit.habit;
    }
  }
}

TEST(DoseWord, says_nothing_where_the_model_has_no_answer) {
  EXPECT_FALSE(advice::dose_word(family("spray"), "seal-lips"));
  EXPECT_FALSE(advice::dose_word(family("spray"), "no-such-habit"));
  EXPECT_FALSE(advice::good_puff(support::ok_family()));
  // An invented factor is shown on its screen, flagged; it is no word for advice.
  EXPECT_FALSE(advice::dose_word(family("powder-cover"), "blows-in"));
  EXPECT_FALSE(advice::dose_word(family("powder-cover"), "seal-lips-vents-clear"));
}

TEST(DoseWord, words_of_known_habits) {
  // New84: pressed 1 s early, lung 8.7 against 20.9 to 22.8 % (a ratio of .38 to .42), and Eve95:
  // not shaken leaves 64 % of the fine dose.
  EXPECT_EQ(advice::dose_word(family("spray"), "presses-first")->likely, "third");
  EXPECT_EQ(advice::dose_word(family("spray"), "shake-then-spray")->likely, "two-thirds");
  EXPECT_EQ(advice::dose_word(family("powder-lever"), "slides-again")->likely, "half");
  EXPECT_TRUE(advice::dose_word(family("powder-lever"), "slides-again")->assumed);
  EXPECT_FALSE(advice::dose_word(family("spray"), "presses-first")->assumed);
}

TEST(DoseWord, shares_have_words_from_none_to_the_same) {
  EXPECT_EQ(advice::share_word(0), "none");
  EXPECT_EQ(advice::share_word(.1), "small");
  EXPECT_EQ(advice::share_word(1. / 3), "third");
  EXPECT_EQ(advice::share_word(.5), "half");
  EXPECT_EQ(advice::share_word(2. / 3), "two-thirds");
  EXPECT_EQ(advice::share_word(.75), "three-quarters");
  EXPECT_EQ(advice::share_word(.9), "little-less");
  EXPECT_EQ(advice::share_word(1), "same");
  EXPECT_EQ(advice::share_word(1.08), "same");
}

}  // namespace
