// What a person told of an inhaler comes back from its code as it was; broken codes are told; and
// what a device keeps: one run once, one state a family, bounded, rubbish left out and counted.
#include "core/exchange/care_code.h"

#include <gtest/gtest.h>

#include "core/exchange/envelope.h"
#include "core/exchange/kept.h"
#include "core/exchange/run_json.h"
#include "tests/support/courses.h"
#include "tests/support/fixture.h"
#include "tests/support/made_codes.h"

namespace rehale::exchange {
namespace {

CareState full() {
  CareState state{
      .family = "soft-mist", .counted = 20782, .left = 57, .doses_a_day = 2, .puffs = 2};
  state.full = 60;
  state.opened = 20700;
  state.expiry = 21000;
  state.used = 20781;
  state.cleaned = 20775;
  state.leaflet = {.in_use_days = 90,
                   .prime_new = 3,
                   .prime_idle = 1,
                   .prime_idle_after_days = 7,
                   .clean_every_days = 7};
  return state;
}

TEST(CareCode, everything_told_comes_back_and_a_link_stays_short) {
  for (const CareState& state : {full(), CareState{.family = "spray", .is_new = true}}) {
    const auto code = write_care(state);
    ASSERT_TRUE(code);
    EXPECT_EQ(code->substr(0, 2), "C1");
    EXPECT_LE(code->size(), 120U);
    const auto back = read_care(*code);
    ASSERT_TRUE(back) << back.error().where;
    EXPECT_EQ(*back, state);
  }
}

TEST(CareCode, every_letter_that_is_lost_or_changed_is_noticed) {
  const std::string code = *write_care(full());
  for (std::size_t n = 0; n < code.size(); ++n) {
    std::string changed = code;
    changed[n] = changed[n] == 'A' ? 'B' : 'A';
    EXPECT_FALSE(read_care(changed)) << n;
    EXPECT_FALSE(read_care(code.substr(0, n))) << n;
  }
  std::string newer = code;
  newer[1] = '2';
  EXPECT_EQ(read_care(newer).error().code, "code-newer");
  EXPECT_EQ(read_care("R" + code.substr(1)).error().code, "code-kind");
}

TEST(CareCode, what_cannot_be_meant_is_named) {
  const auto where = [](auto&& change) {
    CareState state = full();
    change(state);
    const auto code = write_care(state);
    return code ? "written" : code.error().where;
  };
  EXPECT_EQ(where([](auto& s) { s.family = "a b"; }), "family");
  EXPECT_EQ(where([](auto& s) { s.left = 1001; }), "left");
  EXPECT_EQ(where([](auto& s) { s.doses_a_day = 13; }), "doses");
  EXPECT_EQ(where([](auto& s) { s.puffs = 0; }), "puffs");
  EXPECT_EQ(where([](auto& s) { s.doses_a_day = 9, s.puffs = 9; }), "puffs");
  EXPECT_EQ(where([](auto& s) { s.full = 0; }), "full");
  EXPECT_EQ(where([](auto& s) { s.opened = -1; }), "day");
  EXPECT_EQ(where([](auto& s) { s.leaflet.prime_new = 21; }), "sprays");
  EXPECT_EQ(where([](auto& s) { s.leaflet.clean_every_days = 0; }), "days");
}

TEST(CareCode, it_travels_beside_a_run_and_is_found_in_any_text) {
  const std::string code = *write_care(full());
  const auto log = support::scripted_run(support::ok_course(), {}).log();
  const std::string text = with_care(write_log(log), code);
  EXPECT_EQ(read_log(text).value(), log);  // the run beside it reads as before
  for (const std::string& file : {text, care_file(code)}) {
    const auto found = find_codes(file);
    ASSERT_EQ(found.size(), 1U) << file;
    EXPECT_EQ(found[0].kind, Kind::care);
    EXPECT_EQ(read_care(found[0].code).value(), full());
  }
}

ReadResult made_on(Day day, std::uint64_t seed) {
  const auto log = support::scripted_run(support::ok_course(), {.seed = seed}).log();
  return *read_result(*write_result({.day = day}, log, support::ok_course().family));
}

KeptResult result_on(Day day, std::uint64_t seed) {
  const auto log = support::scripted_run(support::ok_course(), {.seed = seed}).log();
  return {*write_result({.day = day}, log, support::ok_course().family), made_on(day, seed)};
}

TEST(Kept, one_run_stands_once_in_the_order_of_days_and_the_oldest_go) {
  Kept kept;
  keep_result(kept, result_on(300, 3));
  keep_result(kept, result_on(100, 1));
  keep_result(kept, result_on(200, 2));
  keep_result(kept, result_on(200, 2));
  keep_care(kept, full());
  keep_care(kept, full());
  auto back = read_kept(write_kept(kept));
  ASSERT_TRUE(back);
  ASSERT_EQ(back->results.size(), 3U);
  EXPECT_EQ(back->results[0].read.head.day, 100);
  EXPECT_EQ(back->results[2].read.head.day, 300);
  ASSERT_EQ(back->care.size(), 1U);
  EXPECT_EQ(*care_of(*back, "soft-mist"), full());
  EXPECT_EQ(care_of(*back, "spray"), nullptr);
  EXPECT_EQ(back->unreadable, 0);
  for (std::uint64_t n = 0; n < k_most_kept_results; ++n) keep_result(kept, result_on(400, 10 + n));
  EXPECT_EQ(kept.results.size(), k_most_kept_results);
  EXPECT_EQ(kept.results.front().read.head.day, 400);
  EXPECT_LE(write_kept(kept).size(), k_most_kept_bytes);
}

TEST(Kept, rubbish_is_refused_or_left_out_and_counted) {
  EXPECT_EQ(read_kept("").error().code, "kept-rubbish");
  EXPECT_EQ(read_kept("{\"results\":[]}").error().code, "kept-rubbish");
  EXPECT_EQ(read_kept(std::string(300'000, 'x')).error().code, "kept-too-long");
  const auto empty = read_kept(write_kept({}));
  ASSERT_TRUE(empty);
  EXPECT_TRUE(empty->results.empty());
  std::string text = write_kept({.results = {result_on(100, 1)}, .care = {full()}});
  text[30] = text[30] == 'A' ? 'B' : 'A';
  text += "A1abcdefghijklmnop\nplain words\n";
  const auto some = read_kept(text);
  ASSERT_TRUE(some);
  EXPECT_EQ(some->results.size(), 0U);
  EXPECT_EQ(some->care.size(), 1U);
  EXPECT_EQ(some->unreadable, 2);
}

}  // namespace
}  // namespace rehale::exchange
