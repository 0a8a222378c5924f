// What an educator sets comes back as it was, and what cannot be meant is refused by name.
#include "core/exchange/assignment_code.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/envelope.h"
#include "core/exchange/sealed_code.h"
#include "tests/support/courses.h"
#include "tests/support/shipped.h"

namespace rehale::exchange {
namespace {

Assignment full() {
  Assignment set;
  set.families = {"spray", "powder-lever", "powder-cover", "soft-mist"};
  set.focus = {"breathe-out-first", "hold-breath"};
  set.questions = 10;
  set.language = "en";
  set.due = 20800;
  set.expires = 20830;
  for (std::size_t n = 0; n < set.id.size(); ++n) set.id[n] = static_cast<std::uint8_t>(n * 17);
  set.key.emplace().fill(7);
  set.key->front() = 4;
  return set;
}

TEST(AssignmentCode, everything_set_comes_back) {
  const auto code = write_assignment(full());
  ASSERT_TRUE(code);
  EXPECT_LE(code->size() + 60, 400U);
  const auto back = read_assignment(*code);
  ASSERT_TRUE(back) << back.error().where;
  EXPECT_EQ(*back, full());
}

TEST(AssignmentCode, the_least_there_is_comes_back) {
  Assignment set;
  set.families = {"spray"};
  const auto back = read_assignment(*write_assignment(set));
  ASSERT_TRUE(back);
  EXPECT_EQ(*back, set);
}

TEST(AssignmentCode, what_cannot_be_meant_is_named) {
  const auto where = [](auto&& change) {
    Assignment set = full();
    change(set);
    const auto code = write_assignment(set);
    return code ? "written" : code.error().where;
  };
  EXPECT_EQ(where([](auto& set) { set.families.clear(); }), "families");
  EXPECT_EQ(where([](auto& set) { set.families.push_back("spray"); }), "families");
  EXPECT_EQ(where([](auto& set) { set.focus = {"a b"}; }), "focus");
  EXPECT_EQ(where([](auto& set) { set.questions = 13; }), "questions");
  EXPECT_EQ(where([](auto& set) { set.questions = 3; }), "questions");
  EXPECT_EQ(where([](auto& set) { set.language = "<b>"; }), "language");
  EXPECT_EQ(where([](auto& set) { set.due = -1; }), "due");
  EXPECT_EQ(where([](auto& set) { set.expires = 20799; }), "expires");
  EXPECT_EQ(where([](auto& set) { set.key->front() = 2; }), "key");
}

TEST(AssignmentCode, a_family_that_the_page_has_not_is_named) {
  Assignment set = full();
  EXPECT_TRUE(check_assignment(set, support::shipped_library()));
  set.families.emplace_back("bubble-pipe");
  const auto checked = check_assignment(set, support::shipped_library());
  ASSERT_FALSE(checked);
  EXPECT_EQ(checked.error().where, "bubble-pipe");
}

TEST(AssignmentCode, due_and_expiry_count_whole_days) {
  const Assignment set = full();
  EXPECT_EQ(timing_of(set, 20800), Timing::in_time);
  EXPECT_EQ(timing_of(set, 20801), Timing::after_due);
  EXPECT_EQ(timing_of(set, 20830), Timing::after_due);
  EXPECT_EQ(timing_of(set, 20831), Timing::expired);
  EXPECT_EQ(timing_of({}, 99999), Timing::in_time);
}

SealedResult sealed() {
  SealedResult result;
  result.assignment = full().id;
  result.content = "0123456789abcdef";
  result.sender = *full().key;
  result.sealed = Bytes(170, 0xa5);
  return result;
}

TEST(SealedCode, comes_back_and_any_lost_letter_is_seen) {
  const auto code = write_sealed(sealed());
  ASSERT_TRUE(code);
  EXPECT_EQ(*read_sealed(*code), sealed());
  for (std::size_t n = 0; n < code->size(); ++n) EXPECT_FALSE(read_sealed(code->substr(0, n)));
}

// The seal adds 16 bytes; the assignment goes in the clear part, so it is left out inside.
TEST(SealedCode, a_whole_run_sealed_still_fits_a_link) {
  const auto& course = *support::shipped_course("soft-mist");
  std::size_t longest = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    support::Script script{.lacks = {course.family.techniques[seed % 10].id}, .seed = ~seed};
    script.questions = 12;
    script.focus = {course.family.techniques.back().id};
    for (std::size_t n = 0; n < 12; ++n) script.recent.push_back(course.family.questions[n * 5].id);
    auto log = support::scripted_run(course, script).log();
    log.front().content = "0123456789abcdef";
    ResultHead head{.page = "0.3.0", .day = 20782, .again = true, .confidence = 4};
    head.person = 4294967295U;
    SealedResult result = sealed();
    result.sealed = *bytes_to_seal(*write_result(head, log, course.family));
    result.sealed.resize(result.sealed.size() + 16);
    longest = std::max(longest, write_sealed(result)->size());
  }
  RecordProperty("longest", static_cast<int>(longest));
  EXPECT_LE(longest + 40, 400U);
}

// What the browser encrypts and gives back; the encryption itself is tested under node.
TEST(SealedCode, opened_bytes_are_the_result_with_the_assignment_of_the_seal) {
  const auto& course = *support::shipped_course("spray");
  support::Script script{.seed = 4};
  script.questions = 7;
  auto log = support::scripted_run(course, script).log();
  log.front().content = "0123456789abcdef";
  ResultHead head{.page = "0.3.0", .day = 20782};
  const auto code = write_result(head, log, course.family);
  const auto bytes = bytes_to_seal(*code);
  ASSERT_TRUE(bytes);
  const auto read = read_opened(sealed(), *bytes);
  ASSERT_TRUE(read) << read.error().detail;
  EXPECT_EQ(read->head.assignment, full().id);
  EXPECT_EQ(*log_of(*read, course.family, "0123456789abcdef"),
            *log_of(*read_result(*code), course.family, "0123456789abcdef"));
  SealedResult other = sealed();
  other.content = "0123456789abcdee";
  EXPECT_EQ(read_opened(other, *bytes).error().code, "sealed-other");
  head.assignment = RandomId{};
  const auto named = bytes_to_seal(*write_result(head, log, course.family));
  EXPECT_EQ(read_opened(sealed(), *named).error().code, "sealed-other");
}

TEST(SealedCode, a_line_to_open_holds_key_bound_bytes_and_sealed_bytes) {
  const std::string line = line_to_open(sealed());
  const auto one = line.find(' '), two = line.rfind(' ');
  const PublicKey sender = sealed().sender;
  EXPECT_EQ(*from_base64url(line.substr(0, one)), Bytes(sender.begin(), sender.end()));
  EXPECT_EQ(*from_base64url(line.substr(one + 1, two - one - 1)),
            bound_bytes(full().id, "0123456789abcdef"));
  EXPECT_EQ(*from_base64url(line.substr(two + 1)), sealed().sealed);
}

TEST(SealedCode, only_whole_results_are_sealed_and_taken) {
  EXPECT_EQ(bytes_to_seal("").error().code, "code-shape");
  EXPECT_EQ(bytes_to_seal("A1AAAA").error().code, "code-shape");
  EXPECT_FALSE(bytes_to_seal("R1A A"));
  EXPECT_FALSE(read_opened(sealed(), {}));
  EXPECT_FALSE(read_opened(sealed(), Bytes(2, 'R')));
  EXPECT_FALSE(read_opened(sealed(), Bytes(60, 'R')));
}

TEST(SealedCode, is_bound_to_its_assignment_and_content) {
  const auto bound = bound_bytes(full().id, "0123456789abcdef");
  EXPECT_EQ(bound.size(), 15U + 16U + 16U);
  EXPECT_NE(bound, bound_bytes({}, "0123456789abcdef"));
  EXPECT_NE(bound, bound_bytes(full().id, "0123456789abcdee"));
}

TEST(SealedCode, too_little_to_hold_a_tag_is_refused) {
  SealedResult result = sealed();
  result.sealed.resize(16);
  EXPECT_EQ(write_sealed(result).error().where, "sealed");
  result = sealed();
  result.content = "no name";
  EXPECT_EQ(write_sealed(result).error().where, "content");
}

TEST(Envelope, codes_are_found_in_what_people_paste) {
  const std::string code = *write_assignment(full());
  const std::string text = "Hello,\nhere: <a href=\"https://example/#" + code + "\">\r\n" + code +
                           "; R1short, R1nonsenseofsomelength\n";
  const auto found = find_codes(text);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(found[0].code, code);
  EXPECT_EQ(found[0].line, 2U);
  EXPECT_EQ(found[1].line, 3U);
  EXPECT_EQ(found[0].kind, Kind::assignment);
  EXPECT_EQ(found[2].kind, Kind::result);  // told when it is read
  EXPECT_EQ(read_result(found[2].code).error().code, "code-check");
}

}  // namespace
}  // namespace rehale::exchange
