// Tables are written as Python's csv module writes them (tests/reference/csv), formulas disarmed.
#include "core/exchange/csv.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/exchange/group_csv.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"
#include "tests/support/made_records.h"

namespace rehale::exchange {
namespace {

std::string reference(const char* name) {
  return support::read_file(support::source_path(std::string("tests/reference/csv/") + name))
      .value_or("");
}

TEST(Csv, is_what_python_writes_byte_for_byte) {
  Csv csv;
  for (const auto& row : nlohmann::json::parse(reference("cells.json"))) {
    for (const auto& cell : row) csv.text(cell.get<std::string>());
    csv.end_row();
  }
  EXPECT_EQ(csv.str(), reference("cells.csv"));
}

TEST(Csv, numbers_have_a_point_and_their_places) {
  EXPECT_EQ(fixed(.05, 2), "0.05");
  EXPECT_EQ(fixed(-.05, 3), "-0.050");
  EXPECT_EQ(fixed(2.5, 0), "3");
  EXPECT_EQ(fixed(999999999, 9), "999999999.000000000");
  EXPECT_EQ(fixed(1e9, 1), "");
  EXPECT_EQ(fixed(NAN, 2), "");
  Csv csv;
  csv.number(std::int64_t{-3}).number(.1, 1).empty().end_row();
  EXPECT_EQ(csv.str(), "\xEF\xBB\xBF-3,0.1,\r\n");
}

// Cells of a line; none of ours here is quoted.
std::vector<std::string> cells_of(const std::string& csv, std::size_t line) {
  std::size_t at = 3;
  for (; line > 0; --line) at = csv.find("\r\n", at) + 2;
  std::vector<std::string> cells{""};
  for (; csv[at] != '\r'; ++at) {
    if (csv[at] == ',') cells.emplace_back();
    else cells.back() += csv[at];
  }
  return cells;
}

TEST(GroupCsv, every_row_has_as_many_cells_as_heads_and_hidden_ones_are_empty) {
  const std::vector<std::string> heads(11, "head"), names(10, "=name");
  for (const std::size_t people : {4U, 400U}) {
    auto records = support::random_records(people, 8);
    for (auto& record : records) record.family = "spray";
    records.front().family = "soft-mist";
    const auto summary = cohort::summarise(records);
    const auto table = cohort::technique_table(summary, {.family = "spray"});
    const auto row = cells_of(technique_csv(table, heads, names), 1);
    ASSERT_EQ(row.size(), k_technique_heads);
    EXPECT_EQ(row[0], "'=name");
    EXPECT_EQ(std::ranges::count(row, ""), people == 4 ? 10 : 0);
    const auto pairs = cohort::before_after(summary, "spray", 10);
    EXPECT_EQ(cells_of(before_after_csv(pairs, heads, names), 1).size(), k_before_after_heads);
    const auto items = cohort::item_table(summary, "spray");
    EXPECT_EQ(cells_of(item_csv(items, heads, names), 1).size(), k_item_heads);
    std::vector<const cohort::Record*> all;
    for (const auto& record : records) all.push_back(&record);
    const auto checks = checks_csv(all, "spray", heads, names);
    EXPECT_EQ(cells_of(checks, 1).size(), k_check_heads + names.size());
    EXPECT_EQ(std::ranges::count(checks, '\n'),
              1 + std::ranges::count(records, "spray", &cohort::Record::family));
  }
}

}  // namespace
}  // namespace rehale::exchange
