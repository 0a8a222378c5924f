// A group is the sum of its parts; small cells stay hidden; what the tables say is counted by hand.
#include "core/cohort/tables.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/made_records.h"

namespace rehale::cohort {
namespace {

Record told(std::uint32_t person, Day day, std::vector<Told> techniques) {
  Record record{.key = person * 1000U + static_cast<std::uint32_t>(day), .family = "spray"};
  record.language = "en";
  record.again = day > 1;
  record.person = person;
  record.day = day;
  for (const Told one : techniques) {
    record.techniques.push_back(
        {one, static_cast<std::uint16_t>(one == Told::not_yet ? 65535 : 0)});
  }
  return record;
}

TEST(Cohort, a_group_is_the_sum_of_its_parts_in_any_order) {
  const auto records = support::random_records(600, 3);
  const Summary whole = summarise(records);
  Rng rng(9);
  for (int round = 0; round < 20; ++round) {
    auto shuffled = records;
    shuffle(shuffled, rng);
    Summary total;
    for (std::size_t from = 0; from < shuffled.size();) {
      const auto size =
          std::min(shuffled.size() - from, static_cast<std::size_t>(1 + rng.below(250)));
      const Summary part = summarise(std::span(shuffled).subspan(from, size));
      total = rng.below(2) == 0 ? sum(total, part) : sum(part, total);
      from += size;
    }
    ASSERT_EQ(total, whole) << round;
  }
  EXPECT_EQ(sum(whole, {}), whole);
}

TEST(Cohort, cells_of_fewer_than_five_people_are_hidden) {
  EXPECT_TRUE(share_of(2, 4).hidden);
  EXPECT_EQ(share_of(2, 4).n, 0);
  EXPECT_FALSE(share_of(2, 5).hidden);
  std::vector<Record> four;
  for (std::uint32_t n = 0; n < 4; ++n) {
    four.push_back(told(n, 1, {Told::not_yet}));
    four.push_back(told(n, 2, {Told::has_it}));
    four.back().items = {{0, true, false}, {1, false, false}};
    four.back().questions = 2;
  }
  const Summary summary = summarise(four);
  for (const bool again : {false, true}) {
    const auto table = technique_table(summary, {.family = "spray", .again = again});
    EXPECT_TRUE(table.helped.hidden);
    EXPECT_TRUE(table.rows[0].not_yet.hidden);
    EXPECT_EQ(table.rows[0].lacking, 0);
  }
  EXPECT_TRUE(before_after(summary, "spray", 1)[0].hidden);
  EXPECT_EQ(before_after(summary, "spray", 1)[0].gained, 0);
  EXPECT_TRUE(item_table(summary, "spray")[0].right.hidden);
  EXPECT_FALSE(item_table(summary, "spray")[0].discrimination);
  EXPECT_FALSE(reliability(summary, "spray"));
}

TEST(Cohort, filters_pick_family_language_and_first_or_later_checks) {
  const auto records = support::random_records(900, 4);
  const Summary summary = summarise(records);
  const Filter filter{.family = "spray", .language = "es", .again = true};
  const auto table = technique_table(summary, filter);
  std::int64_t lacking = 0, told = 0, unclear = 0, checks = 0, helped = 0, held = 0;
  for (const Record& record : records) {
    if (record.family != "spray" || record.language != "es" || !record.again) continue;
    ++checks;
    helped += record.helped ? 1 : 0;
    held += (record.held >> 2) & 1;
    const Told one = record.techniques[3].told;
    lacking += one == Told::not_yet ? 1 : 0;
    told += one == Told::not_yet || one == Told::has_it ? 1 : 0;
    unclear += one == Told::unsure || one == Told::unprobed ? 1 : 0;
  }
  ASSERT_GT(checks, 20);
  EXPECT_EQ(table.rows[3].not_yet, share_of(lacking, told));
  EXPECT_EQ(table.rows[3].unclear, share_of(unclear, checks));
  EXPECT_EQ(table.helped, share_of(helped, checks));
  EXPECT_EQ(table.held[2], share_of(held, checks));
  EXPECT_TRUE(technique_table(summary, {.family = "no-such"}).rows.empty());
}

TEST(Cohort, before_and_after_pairs_the_same_people_only) {
  std::vector<Record> records;
  for (std::uint32_t n = 0; n < 30; ++n) {
    const bool loses = n < 6, gains = n >= 6 && n < 22;  // 6 and 16: the published small example
    records.push_back(told(n, 1, {gains ? Told::not_yet : Told::has_it}));
    records.push_back(told(n, 5, {Told::unsure}));  // in between: of no matter
    records.push_back(told(n, 9, {loses ? Told::not_yet : Told::has_it}));
  }
  records.push_back(told(99, 1, {Told::not_yet}));   // once only
  records.push_back(told(98, 1, {Told::unprobed}));  // never told before
  records.push_back(told(98, 2, {Told::has_it}));
  const auto row = before_after(summarise(records), "spray", 1)[0];
  EXPECT_EQ(row.pairs, 30);
  EXPECT_EQ(row.gained, 16);
  EXPECT_EQ(row.lost, 6);
  EXPECT_EQ(row.lacked_before, 16);
  EXPECT_EQ(row.lack_after, 6);
  EXPECT_NEAR(row.p, .052478790283203125, 1e-12);  // scipy binomtest (facts/diagnosis.md 4.1)
}

TEST(Cohort, copies_of_a_run_count_once_and_the_fullest_stays) {
  auto records = support::random_records(50, 6);
  const auto originals = records;
  for (const std::size_t n : {3U, 20U, 20U}) {
    records.push_back(originals[n]);
    records.back().items.resize(2);
  }
  std::rotate(records.begin(), records.end() - 3, records.end());  // copies first
  EXPECT_EQ(drop_copies(records), 3U);
  ASSERT_EQ(records.size(), 50U);
  EXPECT_EQ(summarise(records), summarise(originals));
}

TEST(Cohort, only_changes_beyond_doubt_are_told) {
  const auto before = told(1, 1, {Told::not_yet, Told::has_it, Told::unsure, Told::not_yet});
  const auto after = told(1, 2, {Told::has_it, Told::has_it, Told::has_it, Told::unsure});
  EXPECT_EQ(changes(before, after),
            (std::vector{Change::gained, Change::none, Change::none, Change::none}));
  EXPECT_EQ(overall({Change::gained}), Change::none);
  EXPECT_EQ(overall({Change::gained, Change::gained}), Change::gained);
  EXPECT_EQ(overall({Change::lost, Change::lost, Change::gained}), Change::none);
  EXPECT_EQ(overall({Change::lost, Change::lost}), Change::lost);
}

TEST(Cohort, who_is_seen_first_follows_the_key) {
  const std::vector<Record> records{
      told(1, 5, {Told::has_it, Told::has_it}),   told(2, 4, {Told::not_yet, Told::has_it}),
      told(3, 1, {Told::has_it, Told::has_it}),   told(3, 6, {Told::has_it, Told::not_yet}),
      told(4, 3, {Told::unprobed, Told::has_it}), told(5, 2, {Told::not_yet, Told::not_yet})};
  const auto order = see_first(records, {{"spray", 0b01}});
  std::vector<std::size_t> places;
  for (const SeeFirst& row : order) places.push_back(row.record);
  // critical lacking, older first; lost one; unprobed; then by date
  EXPECT_EQ(places, (std::vector<std::size_t>{5, 1, 3, 4, 2, 0}));
}

TEST(Cohort, what_to_teach_first_goes_by_its_key_and_can_be_put_otherwise) {
  std::vector<Record> records;
  for (std::uint32_t n = 0; n < 20; ++n) {
    records.push_back(
        told(n, 1,
             {n < 16 ? Told::not_yet : Told::has_it, n < 5 ? Told::not_yet : Told::has_it,
              n < 10 ? Told::not_yet : Told::has_it, Told::unprobed}));
  }
  const auto table = technique_table(summarise(records), {.family = "spray"});
  auto rows = teach_first(table, {{false, 1}, {true, 1}, {true, .8}, {true, 1}});
  const auto order = [&rows] {
    std::vector<std::size_t> techniques;
    for (const TeachRow& row : rows) techniques.push_back(row.technique);
    return techniques;
  };
  EXPECT_EQ(order(), (std::vector<std::size_t>{2, 1, 3, 0}));
  EXPECT_NEAR(rows[0].key, .8 * .5, 1e-12);
  put_first(rows, {0, 3, 77});
  EXPECT_EQ(order(), (std::vector<std::size_t>{0, 3, 2, 1}));
}

}  // namespace
}  // namespace rehale::cohort
