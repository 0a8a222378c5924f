// Intervals, paired tests and question quality against SciPy, statsmodels and pandas on published
// worked examples and random cases (tests/reference/cohort/make.py names the sources).
#include "core/cohort/stats.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/cohort/tables.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"
#include "tests/support/made_records.h"

namespace rehale::cohort {
namespace {

const nlohmann::json& cases() {
  static const auto json = nlohmann::json::parse(
      support::read_file(support::source_path("tests/reference/cohort/cases.json")).value_or("{}"));
  return json;
}

TEST(CohortStats, intervals_are_those_of_statsmodels) {
  int rows = 0;
  for (const auto& row : cases()["intervals"]) {
    const auto k = row[0].get<std::int64_t>(), n = row[1].get<std::int64_t>();
    EXPECT_NEAR(wilson(k, n).low, row[2].get<double>(), 1e-9) << k << " of " << n;
    EXPECT_NEAR(wilson(k, n).high, row[3].get<double>(), 1e-9) << k << " of " << n;
    EXPECT_NEAR(clopper_pearson(k, n).low, row[4].get<double>(), 1e-9) << k << " of " << n;
    EXPECT_NEAR(clopper_pearson(k, n).high, row[5].get<double>(), 1e-9) << k << " of " << n;
    ++rows;
  }
  EXPECT_EQ(rows, 160);
}

TEST(CohortStats, ends_at_none_and_all_are_exact) {
  EXPECT_EQ(wilson(0, 20).low, 0);
  EXPECT_EQ(wilson(20, 20).high, 1);
  EXPECT_EQ(clopper_pearson(0, 20).low, 0);
  EXPECT_EQ(clopper_pearson(20, 20).high, 1);
  EXPECT_EQ(wilson(0, 0).high, 1);
}

TEST(CohortStats, the_paired_test_is_that_of_statsmodels) {
  int rows = 0;
  for (const auto& row : cases()["paired"]) {
    const auto b = row[0].get<std::int64_t>(), c = row[1].get<std::int64_t>();
    const double p = row[2].get<double>();
    EXPECT_NEAR(mcnemar_exact(b, c), p, 1e-9 * p) << b << ", " << c;
    ++rows;
  }
  EXPECT_EQ(rows, 69);
}

Summary summary_of(const nlohmann::json& quality) {
  std::vector<Record> records;
  for (std::size_t n = 0; n < quality["rows"].size(); ++n) {
    const int people = quality.contains("people") ? quality["people"][n].get<int>() : 1;
    const auto record = support::record_of_answers(quality["rows"][n].get<std::string>());
    records.insert(records.end(), static_cast<std::size_t>(people), record);
  }
  return summarise(records);
}

TEST(CohortStats, question_quality_is_that_of_pandas_and_of_the_published_data) {
  for (const char* name : {"lsat6", "gaps"}) {
    const auto& wanted = cases()["questions"][name];
    const auto summary = summary_of(wanted);
    const auto rows = item_table(summary, "spray");
    ASSERT_EQ(rows.size(), wanted["right"].size());
    for (std::size_t n = 0; n < rows.size(); ++n) {
      const double right =
          static_cast<double>(rows[n].right.k) / static_cast<double>(rows[n].right.n);
      EXPECT_NEAR(right, wanted["right"][n].get<double>(), 1e-12);
      ASSERT_TRUE(rows[n].discrimination);
      EXPECT_NEAR(*rows[n].discrimination, wanted["rest"][n].get<double>(), 1e-9) << name << n;
    }
    const auto alpha = reliability(summary, "spray");
    ASSERT_TRUE(alpha);
    EXPECT_NEAR(*alpha, wanted["alpha"].get<double>(), 1e-9) << name;
  }
  EXPECT_NEAR(*reliability(summary_of(cases()["questions"]["lsat6"]), "spray"), .29499719, 5e-9);
}

}  // namespace
}  // namespace rehale::cohort
