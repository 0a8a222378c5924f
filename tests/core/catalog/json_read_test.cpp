// Bounds and forms of the JSON door. The grammar itself is the library's (RFC 8259); what is
// checked here is what we promise on top: bounds, places, no crash on bytes of any kind.
#include <gtest/gtest.h>

#include "core/catalog/json_read.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using catalog::Json;
using catalog::Report;

struct Parsed {
  std::optional<Json> value;
  std::vector<catalog::Finding> findings;
};

Parsed parse(const std::string& bytes) {
  Report report;
  auto value = catalog::parse_json(support::exact("f.json", bytes), report);
  return {std::move(value), report.findings()};
}

std::string rule_of(const std::string& bytes) {
  const auto parsed = parse(bytes);
  return parsed.findings.empty() ? "" : parsed.findings.front().rule;
}

std::string repeated(const std::string& part, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += part;
  return all;
}

TEST(JsonRead, gives_values_in_the_order_of_the_file) {
  const auto parsed = parse(R"({"b":[1,-2.5,true,null,"x"],"a":{}})");
  ASSERT_TRUE(parsed.value);
  EXPECT_EQ(parsed.value->keys, (std::vector<std::string>{"b", "a"}));
  const Json* list = parsed.value->find("b");
  ASSERT_NE(list, nullptr);
  ASSERT_EQ(list->items.size(), 5U);
  EXPECT_EQ(list->items[0].number, 1);
  EXPECT_EQ(list->items[1].number, -2.5);
  EXPECT_TRUE(list->items[2].flag);
  EXPECT_EQ(list->items[3].type, Json::Type::null);
  EXPECT_EQ(list->items[4].text, "x");
  EXPECT_EQ(parsed.value->find("c"), nullptr);
  EXPECT_EQ(list->find("b"), nullptr);
}

TEST(JsonRead, says_line_and_column_of_a_slip) {
  const auto parsed = parse("{\n  \"a\": 1,\n  \"b\" 2\n}");
  ASSERT_EQ(parsed.findings.size(), 1U);
  EXPECT_EQ(parsed.findings[0].rule, "broken-json");
  EXPECT_EQ(parsed.findings[0].remedy.substr(0, 19), "line 3, column 7: s")
      << parsed.findings[0].remedy;
  EXPECT_FALSE(parsed.value);
}

TEST(JsonRead, every_truncation_of_a_file_is_a_finding) {
  const auto whole = support::ok_file("questions.json").bytes;
  const auto end = whole.find_last_of('}');
  for (std::size_t n = 0; n <= end; n += n + 300 < end ? 97 : 1)
    EXPECT_EQ(rule_of(whole.substr(0, n)), "broken-json") << n;
}

TEST(JsonRead, no_single_byte_put_anywhere_crashes) {
  const auto whole = support::ok_file("library.json").bytes;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    for (const char byte : {'\0', '"', '{', ']', '\\', '\xff', '\x80', '9'}) {
      auto bytes = whole;
      bytes[at] = byte;
      const auto parsed = parse(bytes);
      EXPECT_TRUE(parsed.value || !parsed.findings.empty());
    }
  }
}

TEST(JsonRead, takes_a_byte_order_mark_and_windows_line_ends) {
  const auto parsed = parse("\xEF\xBB\xBF{\r\n\"a\":1\r\n}\r\n");
  EXPECT_TRUE(parsed.value);
  EXPECT_TRUE(parsed.findings.empty());
}

// RFC 3629: ff, lone continuation, overlong "/", surrogate, above 10ffff, cut short.
TEST(JsonRead, refuses_what_is_not_utf8) {
  for (const char* bytes :
       {"\xff", "\x80", "\xc0\xaf", "\xed\xa0\x80", "\xf4\x90\x80\x80", "\xe2\x82"}) {
    const auto parsed = parse(std::string("{\"a\":\"") + bytes + "\"}");
    ASSERT_EQ(parsed.findings.size(), 1U);
    EXPECT_EQ(parsed.findings[0].rule, "broken-json");
    for (const char c : parsed.findings[0].remedy) EXPECT_TRUE(c >= ' ' && c <= '~');
  }
}

TEST(JsonRead, a_zero_byte_does_not_hide_what_follows) {
  EXPECT_EQ(rule_of(std::string("{}\0 garbage", 11)), "broken-json");
}

TEST(JsonRead, keeps_to_its_depth) {
  const int most = catalog::k_max_json_depth;
  EXPECT_EQ(rule_of(repeated("[", most) + repeated("]", most)), "");
  EXPECT_EQ(rule_of(repeated("[", most + 1) + repeated("]", most + 1)), "too-deep");
  EXPECT_EQ(rule_of(repeated("[", 500'000)), "too-deep");
  EXPECT_EQ(rule_of(repeated("{\"a\":", 100'000)), "too-deep");
}

TEST(JsonRead, names_the_place_where_it_is_too_deep) {
  std::string bytes = R"({"a":[0,{"b":)" + repeated("[", 40);
  const auto parsed = parse(bytes);
  ASSERT_EQ(parsed.findings.size(), 1U);
  EXPECT_EQ(parsed.findings[0].pointer, "/a/1/b" + repeated("/0", 29));
}

TEST(JsonRead, keeps_to_its_size) {
  const std::string most(catalog::k_max_json_bytes - 2, ' ');
  EXPECT_EQ(rule_of("{}" + most), "");
  EXPECT_EQ(rule_of("{}" + most + " "), "too-large");
  EXPECT_EQ(rule_of("[" + repeated("0,", 70'000) + "0]"), "too-many-values");
}

TEST(JsonRead, finds_each_name_that_stands_twice_once) {
  const auto parsed = parse(R"({"x":[{"b":1,"a":1,"b":2,"b":3,"a":4}]})");
  ASSERT_EQ(parsed.findings.size(), 2U);
  EXPECT_EQ(parsed.findings[0].pointer, "/x/0/a");
  EXPECT_EQ(parsed.findings[1].pointer, "/x/0/b");
  EXPECT_EQ(parsed.findings[1].rule, "duplicate-key");
}

TEST(JsonRead, refuses_numbers_that_no_double_holds) {
  EXPECT_EQ(rule_of("[1e999]"), "broken-json");
}

// RFC 6901 section 3.
TEST(JsonRead, escapes_pointer_tokens) { EXPECT_EQ(catalog::pointer_token("a/b~c"), "a~1b~0c"); }

}  // namespace
