// Links that are not whole or not for this page, made by an independent writer of codes
// (tests/reference/links): what each says. The same links in a browser:
// tests/browser/links_test.mjs.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/support/bank_json.h"
#include "tests/web/app_rig.h"

namespace rehale::screens {
namespace {

using rig::app;

void open(char kind, const std::string& code) {
  switch (kind) {
    case 'r':
      return app().open_handed(code);
    case 'a':
      return app().open_asked(code);
    case 'c':
      return app().open_care_link(code);
    default:
      return app().open_sealed(code);
  }
}

TEST(Links, each_says_what_is_the_matter_with_it) {
  const auto links = nlohmann::json::parse(
      support::read_text(REHALE_SOURCE_DIR "/tests/reference/links/malformed.json"), nullptr,
      false);
  rig::open_app();
  int seen = 0;
  for (const auto& link : links) {
    const auto says = link["says"].get<std::string>();
    const auto fragment = link["fragment"].get<std::string>();
    if (says.empty()) continue;
    app().where = Where::choose;
    open(fragment[1], fragment.substr(3));
    ASSERT_EQ(app().where, Where::trouble) << link["why"];
    EXPECT_EQ(app().trouble.title, says) << link["why"];
    EXPECT_TRUE(app().trouble.can_go_on);
    ++seen;
  }
  EXPECT_GE(seen, 65);
}

}  // namespace
}  // namespace rehale::screens
