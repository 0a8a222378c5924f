// What tests/node/files_test.mjs does not see of calendars and FHIR bundles: refusals and folding.
#include "core/exchange/calendar.h"

#include <gtest/gtest.h>

#include "core/exchange/fhir.h"
#include "tests/support/courses.h"

namespace rehale::exchange {
namespace {

Reminder reminder() { return {"a@rehale", 20782, "Check again", "A note"}; }

std::string where_of(const Reminder& one) {
  const Reminder two[] = {reminder(), one};
  const auto text = write_calendar(two, {20782, 0});
  return text ? "written" : text.error().where;
}

TEST(Calendar, what_cannot_be_is_named) {
  EXPECT_EQ(where_of(reminder()), "written");
  auto one = reminder();
  one.uid = "a b";
  EXPECT_EQ(where_of(one), "reminder 1, uid");
  one = reminder();
  one.on = -1;
  EXPECT_EQ(where_of(one), "reminder 1, on");
  one = reminder();
  one.title.clear();
  EXPECT_EQ(where_of(one), "reminder 1, title");
  one = reminder();
  one.every_days = 7;
  EXPECT_EQ(where_of(one), "reminder 1, times");
  EXPECT_FALSE(write_calendar({}, {20782, 86400}));
}

TEST(Calendar, no_sentence_can_add_a_line_of_its_own) {
  auto one = reminder();
  one.title = "x\r\nEND:VEVENT\rBEGIN:VEVENT";
  const std::string text = *write_calendar({&one, 1}, {20782, 0});
  std::size_t events = 0;
  for (std::size_t at = 0; (at = text.find("\r\nBEGIN:VEVENT", at)) != std::string::npos; ++at)
    ++events;
  EXPECT_EQ(events, 1U);
}

// RFC 5545 section 3.1: 75 bytes a line; unfolding (taking out CRLF and the space) gives it back.
TEST(Calendar, lines_of_every_length_fold_and_unfold) {
  for (std::size_t length = 1; length < 400; length += 7) {
    auto one = reminder();
    one.title.clear();
    while (one.title.size() < length)
      one.title += length % 2 == 0 ? "\xF0\x9F\x8C\xAC" : "\xC3\xBCx";
    std::string text = *write_calendar({&one, 1}, {20782, 0});
    for (std::size_t at = 0; at < text.size();) {
      const auto end = text.find("\r\n", at);
      ASSERT_LE(end - at, 75U);
      ASSERT_NE(static_cast<unsigned char>(text[at]) & 0xC0U, 0x80U);  // no letter is cut
      at = end + 2;
    }
    for (std::size_t at = 0; (at = text.find("\r\n ", at)) != std::string::npos;) text.erase(at, 3);
    EXPECT_NE(text.find("\r\nSUMMARY:" + one.title + "\r\n"), std::string::npos) << length;
  }
}

TEST(Fhir, a_missing_sentence_is_named_with_its_path) {
  const auto& course = *support::shipped_course("spray");
  const auto run = support::scripted_run(course, {});
  const auto bundle = write_fhir(run, {.day = 1}, catalog::Texts{}, {"t", "o", "u"}, 1);
  ASSERT_FALSE(bundle);
  EXPECT_EQ(bundle.error().code, "missing-text");
  EXPECT_TRUE(bundle.error().where.starts_with("questions/"));
}

}  // namespace
}  // namespace rehale::exchange
