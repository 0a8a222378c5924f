// The cursor: types, missing and unknown members, form of ids.
#include "core/catalog/reader.h"

#include <gtest/gtest.h>

#include "tests/support/fixture.h"

namespace {

using namespace rehale;

class ReaderTest : public testing::Test {
 protected:
  catalog::Reader reader(const std::string& bytes) {
    file_ = support::exact("f.json", bytes);
    json_ = catalog::parse_json(file_, report_);
    return {&*json_, file_.path, "", report_};
  }
  // "pointer rule" of all findings.
  std::vector<std::string> found() {
    std::vector<std::string> all;
    for (const auto& finding : report_.findings())
      all.push_back(finding.pointer + ' ' + finding.rule);
    return all;
  }

  catalog::ContentFile file_;
  std::optional<catalog::Json> json_;
  catalog::Report report_;
};

using Found = std::vector<std::string>;

TEST_F(ReaderTest, goes_on_after_each_finding) {
  const auto root = reader(R"({"id":"Two Words","n":"1","list":{},"half":1.5,"blank":" \t"})");
  EXPECT_EQ(root.id("id"), "Two Words");
  EXPECT_EQ(root.number("n"), 0);
  EXPECT_TRUE(root.list("list").empty());
  EXPECT_EQ(root.whole("half"), 0);
  EXPECT_EQ(root.text("blank"), " \t");
  EXPECT_EQ(root.text("gone"), "");
  EXPECT_EQ(found(), (Found{"/id bad-id", "/n wrong-type", "/list wrong-type", "/half wrong-type",
                            "/blank empty-text", "/gone missing-key"}));
}

TEST_F(ReaderTest, optional_members_may_be_missing_but_not_of_another_type) {
  const auto root = reader(R"({"a":1,"b":1,"c":1,"d":"x","e":1})");
  EXPECT_EQ(root.id_or_none("gone"), "");
  EXPECT_FALSE(root.flag_or_no("gone"));
  EXPECT_EQ(root.number_or("gone", 7), 7);
  EXPECT_TRUE(root.ids_or_none("gone").empty());
  EXPECT_FALSE(root.span_or_none("gone").first);
  EXPECT_TRUE(found().empty());
  (void)root.id_or_none("a");
  (void)root.flag_or_no("b");
  (void)root.ids_or_none("c");
  (void)root.number_or("d", 7);
  (void)root.span_or_none("e");
  EXPECT_EQ(found(), (Found{"/a wrong-type", "/b wrong-type", "/c wrong-type", "/d wrong-type",
                            "/e wrong-type"}));
}

TEST_F(ReaderTest, reads_open_ends) {
  const auto root = reader(R"({"open":[5,null],"three":[1,2,3],"words":["a",2],"to":null})");
  const auto [low, high] = root.span_or_none("open");
  EXPECT_EQ(low, 5);
  EXPECT_EQ(high, std::nullopt);
  EXPECT_EQ(root.number_or_null("to"), std::nullopt);
  EXPECT_TRUE(found().empty());
  (void)root.span_or_none("three");
  (void)root.span_or_none("words");
  EXPECT_EQ(found(), (Found{"/three wrong-type", "/words/0 wrong-type"}));
}

TEST_F(ReaderTest, knows_unknown_members_and_their_place) {
  const auto root = reader(R"({"list":[{"id":"a","x/y":1},7]})");
  for (const auto& place : root.list("list")) place.allow_only({"id"});
  EXPECT_EQ(found(), (Found{"/list/0/x~1y unknown-key", "/list/1 wrong-type"}));
}

TEST_F(ReaderTest, reports_each_bad_id_of_a_list) {
  const auto root = reader(R"({"ids":["ok","Not",3,"a--b","-a","a-","a_b","","a-1"]})");
  EXPECT_EQ(root.ids("ids").size(), 9U);
  EXPECT_EQ(found(), (Found{"/ids/1 bad-id", "/ids/2 wrong-type", "/ids/3 bad-id", "/ids/4 bad-id",
                            "/ids/5 bad-id", "/ids/6 bad-id", "/ids/7 bad-id"}));
}

TEST_F(ReaderTest, a_place_that_holds_nothing_can_be_read_on) {
  const auto root = reader("{}");
  EXPECT_EQ(root.at("gone").at("deeper").text("x"), "");
  EXPECT_EQ(found(), (Found{"/gone/deeper/x missing-key"}));
}

}  // namespace
