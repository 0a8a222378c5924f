// A heap of results: what is read, kept once, told as broken. The codes are an invented group's,
// made by tests/support/demo_group.h; keeping one of copies is held against cohort::drop_copies.
#include "core/exchange/intake.h"

#include <gtest/gtest.h>

#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"
#include "tests/support/courses.h"
#include "tests/support/demo_group.h"

namespace rehale::exchange {
namespace {

Intake::Courses courses() {
  Intake::Courses all;
  for (const auto& family : support::shipped_families()) {
    all.emplace_back(support::shipped_course(family), [](const check::Course*) {});
  }
  return all;
}

struct Made {
  std::string code;
  check::Log log;
  ResultHead head;
};

const std::vector<Made>& made() {
  static const std::vector<Made> all = [] {
    std::vector<Made> codes;
    std::vector<const check::Course*> plain;
    for (const auto& course : courses()) plain.push_back(course.get());
    support::demo_group({.people = 16}, plain, [&codes](const auto& course, const auto& result) {
      codes.push_back(
          {*write_result(result.head, result.log, course.family), result.log, result.head});
    });
    return codes;
  }();
  return all;
}

Intake opened() {
  Intake intake;
  intake.open(courses());
  return intake;
}

TEST(Intake, reads_what_qr_codes_say_and_tells_the_foreign_and_the_broken_by_their_number) {
  Intake intake = opened();
  const std::string broken = made()[1].code.substr(0, 40);
  intake.add_scanned("photo.jpg", "https://page.invalid/#r=" + made()[0].code +
                                      "\nWIFI:S:home;;\n" + "https://page.invalid/#r=" + broken +
                                      "\nHavn\xC3\xA9 21 \xC3\xB8\xC3\xB8\n" + made()[2].code);
  EXPECT_EQ(intake.records().size(), 2U);
  EXPECT_EQ(intake.lines_without(), 0U);
  ASSERT_EQ(intake.unread().size(), 3U);
  EXPECT_EQ(intake.unread()[0].error.code, "code-foreign");
  EXPECT_EQ(intake.unread()[0].start, "WIFI:S:home;");
  EXPECT_EQ(intake.unread()[1].start, broken.substr(0, 12));
  EXPECT_NE(intake.unread()[1].error.code, "code-foreign");
  EXPECT_EQ(intake.unread()[2].start, "Havn\xC3\xA9 21 \xC3\xB8");  // 12 bytes, no letter in two
  for (std::size_t n = 0; n < 3; ++n) {
    EXPECT_EQ(intake.unread()[n].place.source, "photo.jpg");
    EXPECT_EQ(intake.unread()[n].place.line, n + 2);
    EXPECT_TRUE(intake.unread()[n].place.scanned);
  }
}

TEST(Intake, a_start_is_never_cut_within_a_letter) {
  Intake intake = opened();
  intake.add_scanned("photo.jpg", "abcdefghijk\xC3\xB8\xC3\xB8");
  ASSERT_EQ(intake.unread().size(), 1U);
  EXPECT_EQ(intake.unread()[0].start, "abcdefghijk");
}

TEST(Intake, reads_codes_and_links_among_other_words) {
  Intake intake = opened();
  std::string text = "Dear clinic,\n\nhere they are:\r\n";
  for (const Made& one : made()) text += "https://page.invalid/rehale/#r=" + one.code + "\r\n";
  intake.add_text({"mail.txt", 1}, text);
  ASSERT_EQ(intake.records().size(), made().size());
  EXPECT_EQ(intake.unread_count(), 0U);
  EXPECT_EQ(intake.lines_without(),
            2U);  // the greeting and "here they are"; empty lines are nothing
  for (std::size_t n = 0; n < made().size(); ++n) EXPECT_EQ(intake.code(n), made()[n].code);
}

TEST(Intake, a_broken_code_is_told_with_its_line_and_the_rest_goes_on) {
  Intake intake = opened();
  std::string broken = made()[1].code;
  broken[broken.size() / 2] = broken[broken.size() / 2] == 'A' ? 'B' : 'A';
  const std::string cut = made()[2].code.substr(0, 20);
  std::string newer = made()[3].code;
  newer[1] = '9';
  intake.add_text({"list.csv", 11}, made()[0].code + "\n" + broken + "\n" + cut + "\n" + newer +
                                        "\n" + made()[4].code + ",\"" + made()[5].code + "\"\n");
  EXPECT_EQ(intake.records().size(), 3U);
  ASSERT_EQ(intake.unread().size(), 3U);
  EXPECT_EQ(intake.unread()[0].place.line, 12U);
  EXPECT_EQ(intake.unread()[0].place.source, "list.csv");
  EXPECT_EQ(intake.unread()[0].start, broken.substr(0, 12));
  EXPECT_EQ(intake.unread()[0].error.code, "code-check");
  EXPECT_EQ(intake.unread()[1].place.line, 13U);
  EXPECT_EQ(intake.unread()[2].error.code, "code-newer");
}

TEST(Intake, other_content_is_told_and_not_guessed_at) {
  Intake intake = opened();
  const auto* spray = support::shipped_course("spray");
  const auto other = check::make_course(spray->family, "fedcba9876543210");
  const auto log = support::scripted_run(*other, {.seed = 3}).log();
  intake.add_text({"", 1}, *write_result({}, log, other->family));
  intake.add_run_file({"run.json", 0}, write_log(log));
  EXPECT_TRUE(intake.records().empty());
  ASSERT_EQ(intake.unread().size(), 2U);
  for (const Unread& item : intake.unread()) EXPECT_EQ(item.error.code, "content-other");
}

TEST(Intake, an_assignment_is_no_result_and_a_sealed_one_waits_for_its_key) {
  Intake intake = opened();
  const auto sealed = write_sealed({.content = "0123456789abcdef", .sealed = Bytes(40, 7)});
  ASSERT_TRUE(sealed) << sealed.error().detail;
  std::string cut = *sealed;
  cut.pop_back();
  intake.add_text({"", 1}, "A1" + made()[0].code.substr(2) + "\n" + *sealed + "\n" + cut);
  ASSERT_EQ(intake.sealed().size(), 1U);
  EXPECT_EQ(intake.sealed()[0].code, *sealed);
  EXPECT_EQ(intake.sealed()[0].place.line, 2U);
  ASSERT_EQ(intake.unread().size(), 2U);
  EXPECT_EQ(intake.unread()[0].error.code, "code-kind");
}

// Opened bytes as the page gives them; nothing where the key is another's.
TEST(Intake, what_a_key_opens_is_counted_and_the_rest_waits_on) {
  Intake intake = opened();
  const auto* spray = support::shipped_course("spray");
  const auto log = support::scripted_run(*spray, {.seed = 5}).log();
  const std::string code = *write_result({}, log, spray->family);
  const RandomId id{1, 2, 3};
  const SealedResult seal{.assignment = id, .content = spray->content, .sealed = Bytes(40, 7)};
  const SealedResult other{.assignment = id, .content = "fedcba9876543210", .sealed = Bytes(40, 8)};
  intake.add_text({"list", 1}, *write_sealed(seal) + "\n" + *write_sealed(other) + "\n" +
                                   *write_sealed(seal) + "\n" + *write_sealed(seal));
  auto waiting = intake.take_sealed();
  ASSERT_EQ(waiting.size(), 4U);
  EXPECT_EQ(intake.sealed_count(), 0U);
  const Bytes opened_bytes = *bytes_to_seal(code);
  for (std::size_t n = 0; n < 3; ++n) intake.add_opened(waiting[n], opened_bytes);
  intake.add_opened(waiting[3], {});
  ASSERT_EQ(intake.records().size(), 1U);
  EXPECT_EQ(read_result(intake.code(0))->head.assignment, id);
  EXPECT_EQ(intake.copies(), 1U);
  ASSERT_EQ(intake.unread().size(), 1U);  // bound to other questions than it holds
  EXPECT_EQ(intake.unread()[0].error.code, "sealed-other");
  EXPECT_EQ(intake.unread()[0].place.line, 2U);
  EXPECT_EQ(intake.sealed_count(), 1U);
  intake.add_opened(intake.take_sealed()[0], Bytes{9, 9, 9});
  EXPECT_EQ(intake.unread_count(), 2U);
}

// What the person who opens seals calls: the payload is the same bytes as a plain code's.
TEST(Intake, a_result_without_its_code_gets_one_written_that_reads_the_same) {
  Intake intake = opened();
  const auto result = read_result(made()[0].code);
  ASSERT_TRUE(intake.add_result(*result));
  EXPECT_EQ(intake.code(0), made()[0].code);
}

TEST(Intake, copies_are_kept_once_as_drop_copies_keeps_them) {
  Intake intake = opened();
  std::vector<cohort::Record> plain;
  for (int turn = 0; turn < 3; ++turn) {
    for (std::size_t n = 0; n < made().size(); n += 2) {
      intake.add_text({"", 1}, made()[n].code);
      plain.push_back(intake.records()[n / 2]);
    }
  }
  const std::size_t gone = cohort::drop_copies(plain);
  EXPECT_EQ(intake.copies(), gone);
  ASSERT_EQ(intake.records().size(), plain.size());
  for (std::size_t n = 0; n < plain.size(); ++n) EXPECT_EQ(intake.records()[n].key, plain[n].key);
}

TEST(Intake, of_two_copies_the_one_with_most_answers_stays) {
  Intake intake = opened();
  const auto* course = support::shipped_course(made()[0].log.front().family);
  check::Log early = made()[0].log;
  early.resize(9);
  const std::string less = *write_result(made()[0].head, early, course->family);
  for (const std::string& code : {less, made()[0].code, less}) intake.add_text({"", 1}, code);
  ASSERT_EQ(intake.records().size(), 1U);
  EXPECT_EQ(intake.copies(), 2U);
  EXPECT_EQ(intake.code(0), made()[0].code);
}

TEST(Intake, a_run_file_is_the_same_record_without_a_day) {
  Intake intake = opened();
  intake.add_text({"", 1}, made()[0].code);
  intake.add_run_file({"rehale-result.json", 0}, write_log(made()[0].log));
  ASSERT_EQ(intake.records().size(), 2U);
  const auto &code = intake.records()[0], &file = intake.records()[1];
  EXPECT_EQ(file.day, 0);
  ASSERT_EQ(file.techniques.size(), code.techniques.size());
  for (std::size_t k = 0; k < code.techniques.size(); ++k) {
    EXPECT_EQ(file.techniques[k].lacking, code.techniques[k].lacking);
  }
  for (const char* bad : {"", "{", "{\"kind\":\"other\"}", "[]"}) {
    intake.add_run_file({"x.json", 0}, bad);
  }
  EXPECT_EQ(intake.unread_count(), 4U);
  EXPECT_EQ(intake.unread()[0].place.line, 0U);
}

TEST(Intake, what_is_listed_is_bounded_and_all_is_counted) {
  Intake intake = opened();
  std::string text;
  for (int n = 0; n < 5000; ++n) text += "R1abcdefghijklmnop\n";
  intake.add_text({"", 1}, text);
  EXPECT_EQ(intake.unread_count(), 5000U);
  EXPECT_EQ(intake.unread().size(), k_listed_unread);
  intake.add_text({"", 1}, std::string(1 << 20, 'R'));  // one word of a million letters
  EXPECT_TRUE(intake.records().empty());
}

}  // namespace
}  // namespace rehale::exchange
