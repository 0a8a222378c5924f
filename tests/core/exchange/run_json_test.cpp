// A run's log survives the way out and back, and broken texts are told apart with their place.
#include "core/exchange/run_json.h"

#include <gtest/gtest.h>

#include <memory>

namespace rehale::exchange {
namespace {

check::Log sample() {
  check::Event begin{.what = check::What::begin, .at_ms = 0};
  begin.family = "spray";
  begin.seed = 18446744073709551615ULL;
  begin.content = "0123456789abcdef";
  begin.language = "en";
  begin.recent = {"breath-speed"};
  check::Event shown{.what = check::What::shown, .at_ms = 12.5, .question = "put-in-order"};
  check::Event answered{.what = check::What::answered, .at_ms = 99.25, .question = "put-in-order"};
  answered.answer.picked = {"open", "shake", "press"};
  check::Event unsure{.what = check::What::answered, .at_ms = 120, .question = "hold"};
  unsure.answer.unsure = true;
  check::Event amount{.what = check::What::retry_answered, .at_ms = 130, .question = "hold"};
  amount.answer.amount = 4.125;
  return {begin, shown, answered, unsure, amount};
}

// The bytes in a buffer of exactly their size, so that a sanitizer sees any read beyond.
Result<check::Log> read_exact(const std::string& text) {
  const auto bytes = std::make_unique<char[]>(text.size());
  text.copy(bytes.get(), text.size());
  return read_log({bytes.get(), text.size()});
}

TEST(RunJson, a_log_comes_back_as_it_was) {
  const auto back = read_exact(write_log(sample()));
  ASSERT_TRUE(back) << back.error().code << " " << back.error().where;
  EXPECT_EQ(*back, sample());
}

TEST(RunJson, every_truncation_is_an_error_with_a_remedy) {
  const std::string text = write_log(sample());
  for (std::size_t n = 0; n < text.size(); ++n) {
    const auto back = read_exact(text.substr(0, n));
    ASSERT_FALSE(back) << "cut at " << n;
    EXPECT_FALSE(back.error().detail.empty());
  }
}

TEST(RunJson, an_answer_cut_out_of_an_event_is_named_with_its_place) {
  std::string text = write_log(sample());
  const auto from = text.find(",\"answer\":{\"unsure\":true}");
  text.erase(from, std::string(",\"answer\":{\"unsure\":true}").size());
  const auto back = read_exact(text);
  ASSERT_FALSE(back);
  EXPECT_EQ(back.error().code, "log-truncated");
  EXPECT_EQ(back.error().where, "/events/3/answer");
}

TEST(RunJson, deep_nesting_and_great_length_are_refused_before_parsing) {
  EXPECT_EQ(read_exact(std::string(100000, '[')).error().code, "log-too-long");
  EXPECT_EQ(read_exact(std::string(k_max_log_bytes + 1, ' ')).error().code, "log-too-long");
}

TEST(RunJson, a_text_of_another_kind_or_a_newer_schema_says_so) {
  EXPECT_EQ(read_exact("{\"events\":[]}").error().code, "log-shape");
  EXPECT_EQ(read_exact("{\"schema\":2,\"kind\":\"rehale-run\",\"events\":[]}").error().where,
            "/schema");
  EXPECT_EQ(read_exact("[1]").error().code, "log-shape");
}

TEST(RunJson, seeds_beyond_64_bits_are_refused) {
  std::string text = write_log(sample());
  const auto at = text.find("18446744073709551615");
  text.replace(at, 20, "18446744073709551616");
  EXPECT_EQ(read_exact(text).error().where, "/events/0/seed");
}

}  // namespace
}  // namespace rehale::exchange
