// Hand-made run-throughs with what they must show: timelines.json, each with its why. The numbers
// held against are of the facts sheet, sections 1 and 9 (sources in each family's procedure.json).
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

#include <nlohmann/json.hpp>

#include "core/rehearsal/account.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using Json = nlohmann::json;
using rehearsal::Account;
using rehearsal::Why;
using Names = std::set<std::string>;

const Json& table() {
  static const Json all = Json::parse(
      support::read_file(support::source_path("tests/core/rehearsal/timelines.json")).value_or(""));
  return all.at("timelines");
}

rehearsal::Take take_of(const Json& row) {
  rehearsal::Take take;
  take.family = row.at("family").get<std::string>();
  take.doses = row.at("doses").get<int>();
  for (const Json& act : row.at("acts")) {
    take.acts.push_back({act.at("step").get<std::string>(), act.at("start_s").get<double>() * 1000,
                         act.at("end_s").get<double>() * 1000, act.value("skipped", false)});
  }
  return take;
}

Names names(const Json& list) { return list.get<Names>(); }

Names shown(const catalog::Family& family, const Account& account, bool met) {
  Names ids;
  for (const auto& one : account.shown) {
    if (one.met == met) ids.insert(family.techniques[static_cast<std::size_t>(one.technique)].id);
  }
  return ids;
}

Names found(const Account& account, Why why, std::string rehearsal::Finding::*what) {
  Names ids;
  for (const auto& finding : account.findings) {
    if (finding.why == why && !(finding.*what).empty()) ids.insert(finding.*what);
  }
  return ids;
}

void expect_measured(const Json& expect, const Account& account) {
  for (const auto& [criterion, value] : expect.at("measured").items()) {
    const bool there = std::ranges::any_of(account.findings, [&](const auto& finding) {
      return finding.why == Why::measured && finding.criterion == criterion &&
             std::abs(finding.value - value.template get<double>()) < 1e-9;
    });
    EXPECT_TRUE(there) << criterion << " of " << value;
  }
}

TEST(Timelines, show_what_they_were_made_to_show) {
  EXPECT_GE(table().size(), 40U);
  for (const Json& row : table()) {
    SCOPED_TRACE(row.at("family").get<std::string>() + " " + row.at("name").get<std::string>());
    const auto& family = support::shipped_family(row.at("family").get<std::string>());
    const auto account = rehearsal::account_of(family, take_of(row));
    ASSERT_TRUE(account.has_value()) << account.error().code << ' ' << account.error().where;
    const Json& expect = row.at("expect");
    EXPECT_EQ(shown(family, *account, false), names(expect.at("missed")));
    const Names met = shown(family, *account, true);
    EXPECT_TRUE(std::ranges::includes(met, names(expect.at("met"))));
    EXPECT_EQ(found(*account, Why::left_out, &rehearsal::Finding::step),
              names(expect.at("left_out")));
    EXPECT_EQ(found(*account, Why::order, &rehearsal::Finding::rule), names(expect.at("rules")));
    EXPECT_EQ(found(*account, Why::betrayed, &rehearsal::Finding::misconception),
              names(expect.at("betrayed")));
    EXPECT_EQ(account->report.state.doses.inhaled, expect.at("inhaled").get<int>());
    EXPECT_EQ(account->report.state.doses.wasted, expect.at("wasted").get<int>());
    expect_measured(expect, *account);
    Names forgiven;
    for (const auto& finding : account->findings) {
      if (finding.forgiven) forgiven.insert(finding.criterion);
    }
    EXPECT_EQ(forgiven, names(expect.at("forgiven")));
  }
}

TEST(Timelines, of_every_family_are_in_the_table) {
  Names families;
  for (const Json& row : table()) families.insert(row.at("family").get<std::string>());
  EXPECT_EQ(families, (Names{"powder-cover", "powder-lever", "soft-mist", "spray"}));
}

}  // namespace
