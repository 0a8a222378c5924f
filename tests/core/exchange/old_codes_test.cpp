// Codes of every version that was ever written still read, from the committed corpus. Never change
// a line there; a new version gets a new file (rehale_codes prints it).
#include <gtest/gtest.h>

#include "core/exchange/care_code.h"
#include "core/exchange/envelope.h"
#include "core/exchange/result_code.h"
#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"
#include "tests/support/made_codes.h"

namespace rehale::exchange {
namespace {

std::vector<support::MadeCode> corpus(int version) {
  const auto text = support::read_file(
      support::source_path("tests/fixtures/codes/version" + std::to_string(version) + ".txt"));
  std::vector<support::MadeCode> codes;
  if (!text) return codes;
  for (std::size_t at = 0; at < text->size();) {
    const auto tab = text->find('\t', at), end = text->find('\n', at);
    codes.push_back({text->substr(at, tab - at), text->substr(tab + 1, end - tab - 1)});
    at = end + 1;
  }
  return codes;
}

TEST(OldCodes, results_of_every_version_give_the_log_of_that_time) {
  int results = 0;
  for (int version = 1; version <= k_result_version; ++version) {
    for (const auto& [code, log] : corpus(version)) {
      if (code[0] != 'R') continue;
      ++results;
      const auto read = read_result(code);
      ASSERT_TRUE(read) << code << read.error().detail;
      EXPECT_EQ(read->version, version);
      const auto back = log_of(*read, support::ok_course().family, support::k_ok_content);
      ASSERT_TRUE(back) << code << back.error().where << back.error().detail;
      EXPECT_EQ(write_log(*back), log);
    }
  }
  EXPECT_GE(results, 7);
}

TEST(OldCodes, assignments_sealed_results_and_inhalers_of_every_version_still_read) {
  int read = 0;
  for (const auto& made : corpus(1)) {
    if (made.code[0] == 'A') {
      ASSERT_TRUE(read_assignment(made.code)) << made.code;
      ++read;
    }
    if (made.code[0] == 'S') {
      ASSERT_TRUE(read_sealed(made.code)) << made.code;
      ++read;
    }
    if (made.code[0] == 'C') {
      ASSERT_TRUE(read_care(made.code)) << made.code;
      ++read;
    }
  }
  EXPECT_EQ(read, 5);
}

TEST(OldCodes, the_corpus_is_what_is_written_today) {
  for (int version = 1; version <= k_result_version; ++version) {  // both are still written
    const auto newest = corpus(version);
    const auto made = support::made_codes(version);
    ASSERT_EQ(newest.size(), made.size());
    for (std::size_t n = 0; n < made.size(); ++n) EXPECT_EQ(newest[n].code, made[n].code);
  }
}

}  // namespace
}  // namespace rehale::exchange
