// The library file and the sentences it needs.
#include <gtest/gtest.h>

#include "core/catalog/content_id.h"
#include "core/catalog/load.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using Found = std::vector<std::string>;

Found found(const std::vector<catalog::Finding>& findings) {
  Found all;
  for (const auto& f : findings) all.push_back(f.pointer + ' ' + f.rule);
  return all;
}

// Findings of the good library with one text put for another.
Found after(const std::string& from, const std::string& to) {
  auto bytes = support::ok_file("library.json").bytes;
  const auto at = bytes.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  bytes.replace(at, from.size(), to);
  return found(catalog::load_library(support::exact("library.json", bytes)).findings);
}

TEST(LoadLibrary, loads_what_the_file_says) {
  const auto library = support::ok_library();
  EXPECT_EQ(library.families, (std::vector<catalog::Id>{"bubble-pipe"}));
  EXPECT_EQ(library.sources.size(), 1U);
  EXPECT_EQ(library.criteria.front().pass_low, 5);
  EXPECT_EQ(library.criteria.front().pass_high, std::nullopt);
  EXPECT_EQ(library.finder[0].answers[1].next, "colour");
}

TEST(LoadLibrary, names_what_is_unknown) {
  EXPECT_EQ(after("\"family\": \"bubble-pipe\"}, {\"id\": \"no\"",
                  "\"family\": \"pan\"}, {\"id\": \"no\""),
            (Found{"/finder/0/answers/0/family unknown-family"}));
  EXPECT_EQ(after("\"sources\": [\"Inv01\"]", "\"sources\": [\"Inv9\"]"),
            (Found{"/criteria/0/sources/0 unknown-source"}));
  EXPECT_EQ(after("\"unit\": \"s\"", "\"unit\": \"s\", \"technique\": \"dance\""),
            (Found{"/criteria/0/technique unknown-shared-technique"}));
  EXPECT_EQ(after("\"unit\": \"s\"", "\"unit\": \"s\", \"action\": \"hold\""),
            (Found{"/criteria/0/action unknown-action"}));
}

TEST(LoadLibrary, the_finder_ends_and_reaches_all) {
  EXPECT_EQ(after("\"next\": \"colour\"", "\"next\": \"pipe\""),
            (Found{"/finder/0/answers/1/next finder-order", "/finder/1 finder-unreached"}));
  EXPECT_EQ(after("\"next\": \"colour\"", "\"next\": \"taste\""),
            (Found{"/finder/0/answers/1/next unknown-step", "/finder/1 finder-unreached"}));
  EXPECT_EQ(after("{\"id\": \"unsure\"}",
                  "{\"id\": \"unsure\", \"family\": \"bubble-pipe\", \"next\": \"colour\"}"),
            (Found{"/finder/1/answers/1/next finder-order", "/finder/1/answers/1 finder-both"}));
  EXPECT_EQ(after("[\"bubble-pipe\"]", "[\"bubble-pipe\", \"kettle\"]"),
            (Found{"/families/1 finder-misses"}));
  EXPECT_EQ(after(", {\"id\": \"unsure\"}", ""), (Found{"/finder/1/answers option-count"}));
}

TEST(LoadLibrary, lists_hold_each_thing_once_and_something) {
  EXPECT_EQ(after("[\"en\"]", "[\"en\", \"en\"]"), (Found{"/languages/1 duplicate-id"}));
  EXPECT_EQ(after("[\"en\"]", "[]"), (Found{"/languages count"}));
}

TEST(LoadTexts, flattens_sentences_and_leaves_the_head_out) {
  const auto loaded = catalog::load_texts(support::exact(
      "t.json", R"({"schema":1,"language":"en","a":{"b":{"1":"x"},"c":"y"},"d":"z"})"));
  ASSERT_TRUE(loaded.value);
  EXPECT_EQ(loaded.value->all(),
            (std::map<std::string, std::string>{{"a/b/1", "x"}, {"a/c", "y"}, {"d", "z"}}));
  ASSERT_NE(loaded.value->find("a/c"), nullptr);
  EXPECT_EQ(*loaded.value->find("a/c"), "y");
  EXPECT_EQ(loaded.value->find("a"), nullptr);
}

TEST(LoadTexts, a_leaf_must_be_words) {
  EXPECT_EQ(found(catalog::load_texts(
                      support::exact("t.json", R"({"a":{"b":1,"c":[],"d/e":"x"},"f":""})"))
                      .findings),
            (Found{"/a/b wrong-type", "/a/c wrong-type", "/a/d~1e bad-id", "/f empty-text"}));
  EXPECT_EQ(found(catalog::load_texts(support::exact("t.json", "7")).findings),
            (Found{" wrong-type"}));
}

TEST(LibraryTexts, the_finder_needs_its_words_and_no_others) {
  const auto file = support::exact("en.json", R"({"about":{"x":"free"},"finder":{
      "pipe":{"ask":"a","answers":{"yes":"a","no":"a"}},
      "colour":{"ask":"a","answers":{"green":"a","red":"a"}}}})");
  EXPECT_EQ(found(catalog::load_library_texts(support::ok_library(), file).findings),
            (Found{"/finder/colour/answers/unsure missing-text",
                   "/finder/colour/answers/red unneeded-text"}));
}

// What the build has checked is not checked again, down to the byte; anything else is.
TEST(Checked, goes_for_the_very_bytes_only) {
  auto files = support::ok_files();
  support::replace_in(files.procedure, R"("weight": )", R"("weight": 7)");
  catalog::Library library = support::ok_library();
  EXPECT_FALSE(catalog::load_family(library, "bubble-pipe", files).findings.empty());
  library.checked["bubble-pipe"] = catalog::content_id(files.procedure, files.questions);
  EXPECT_TRUE(catalog::load_family(library, "bubble-pipe", files).value);
  files.questions.bytes += '\n';
  EXPECT_FALSE(catalog::load_family(library, "bubble-pipe", files).findings.empty());
}

}  // namespace
