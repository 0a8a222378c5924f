// The weakness planted in an invented group is found by the tables, from the codes alone. (The
// group of 2,000: tests/node/demo_group_test.mjs.)
#include "tests/support/demo_group.h"

#include <gtest/gtest.h>

#include "core/cohort/tables.h"
#include "tests/support/courses.h"

namespace rehale {
namespace {

std::vector<cohort::Record> records_of(const support::DemoPlan& plan) {
  std::vector<cohort::Record> records;
  support::demo_group(
      plan, {support::shipped_course("powder-lever")}, [&](const auto& course, const auto& made) {
        const auto code = exchange::write_result(made.head, made.log, course.family);
        ASSERT_TRUE(code) << code.error().where;
        const auto result = exchange::read_result(*code);
        const auto log = exchange::log_of(*result, course.family, course.content);
        ASSERT_TRUE(*log == made.log);
        const auto run = check::Run::replay(course, *log);
        ASSERT_TRUE(run) << run.error().where;
        records.push_back(cohort::record_of(*run, {.key = exchange::run_key(*result),
                                                   .again = result->head.again,
                                                   .made_up = result->head.made_up,
                                                   .day = result->head.day,
                                                   .person = result->head.person}));
      });
  return records;
}

TEST(DemoGroup, the_planted_weakness_is_what_to_teach_first) {
  support::DemoPlan plan{.people = 120, .seed = 3, .other_share = .5};
  const auto records = records_of(plan);
  const auto summary = cohort::summarise(records);
  const auto& family = support::shipped_course("powder-lever")->family;
  std::vector<cohort::TeachWeight> weights;
  for (const auto& technique : family.techniques)
    weights.push_back({technique.critical, technique.weight});
  const auto first_of = [&](const std::string& language) {
    return cohort::teach_first(
        cohort::technique_table(summary,
                                {.family = family.id, .language = language, .again = false}),
        weights)[0];
  };
  const auto planted = first_of(plan.other_language);
  EXPECT_EQ(family.techniques[planted.technique].id, plan.planted_technique);
  EXPECT_GT(planted.not_yet.low, .4);
  EXPECT_NE(family.techniques[first_of("en").technique].id, plan.planted_technique);
  EXPECT_EQ(summary.slices[0].made_up, summary.slices[0].checks);  // all marked as made up
}

}  // namespace
}  // namespace rehale
