// Sealed results at the desk on the null host: what the page is asked, what comes of its answers.
// The seals themselves: tests/node/sealing_test.mjs; the whole loop: desk_sealed_test.mjs.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/sealed_code.h"
#include "tests/support/courses.h"
#include "tests/web/app_rig.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using rig::app;
using rig::press;
using rig::told;
using shell::Role;

constexpr std::size_t k_people = 30;  // more than are opened in one go

// Seals of runs of the spray, and what opens them, a line each.
struct Sealed {
  std::string codes;
  std::vector<std::string> opened;
};

Sealed sealed_runs() {
  Sealed all;
  const auto course = rig::page_course("spray");
  for (std::size_t n = 0; n < k_people; ++n) {
    const auto log = support::scripted_run(*course, {.seed = n + 1}).log();
    const std::string code = *exchange::write_result({}, log, course->family);
    exchange::SealedResult seal{.assignment = {1, 2, 3}, .content = course->content};
    seal.sealed.assign(60, static_cast<std::uint8_t>(n));  // stands for the page's
    all.codes += *exchange::write_sealed(seal) + '\n';
    all.opened.push_back(exchange::to_base64url(*exchange::bytes_to_seal(code)));
  }
  return all;
}

std::string joined(const std::vector<std::string>& lines, std::size_t from, std::size_t to) {
  std::string all;
  for (std::size_t n = from; n < to; ++n) all += (n > from ? "\n" : "") + lines[n];
  return all;
}

void read_at_desk(const std::string& codes) {
  rig::open_app({shell::k_option_desk, "1"});
  press(Role::button, "Read results");
  null::set_reply("deskAsk", "read");
  null::set_reply("deskNext", "end 1000 0 -\n");
  press(Role::button, "Add results");
  exchange::Intake::Courses courses;
  for (const auto& family : support::shipped_families())
    courses.push_back(app().content.family(family)->course);
  app().desk.begin_reading(courses);
  EXPECT_TRUE(app().desk.take("text 500 1 Pasted text\n" + codes));
  app().desk.end_reading();
  shell::redraw();
  null::settle();
}

constexpr const char* k_open = "Open sealed results with my key";

TEST(DeskSeal, opens_a_few_at_a_time_and_adds_them_up) {
  const Sealed all = sealed_runs();
  Desk desk;
  desk.begin_reading({rig::page_course("spray")});
  EXPECT_TRUE(desk.take("text 500 1 list\n" + all.codes));
  desk.end_reading();
  while (desk.add_up()) {
  }
  ASSERT_EQ(desk.intake.sealed_count(), k_people);
  desk.begin_opening();
  const std::string first = desk.lines_to_open();
  const auto lines = static_cast<std::size_t>(std::ranges::count(first, '\n')) + 1;
  ASSERT_LT(lines, k_people);
  desk.take_opened(joined(all.opened, 0, lines));
  EXPECT_EQ(desk.percent(), static_cast<int>(100 * lines / k_people));
  EXPECT_EQ(static_cast<std::size_t>(std::ranges::count(desk.lines_to_open(), '\n')) + 1,
            k_people - lines);
  desk.end_reading();  // stopped: the rest waits on
  while (desk.add_up()) {
  }
  EXPECT_EQ(desk.intake.records().size(), lines);
  EXPECT_EQ(desk.intake.sealed_count(), k_people - lines);
  desk.begin_opening();
  desk.take_opened(joined(all.opened, lines, k_people));
  EXPECT_EQ(desk.lines_to_open(), "");
  EXPECT_EQ(desk.not_opened(), 0U);
  desk.end_reading();
  while (desk.add_up()) {
  }
  EXPECT_EQ(desk.intake.records().size(), k_people);
  EXPECT_EQ(desk.intake.sealed_count(), 0U);
}

TEST(DeskSeal, another_key_opens_none_and_they_wait_on) {
  read_at_desk(sealed_runs().codes);
  null::set_reply("unlock", exchange::to_base64url(exchange::PublicKey{4, 5}));
  null::set_reply("openSealed", "\n\n");  // lines of nothing, too few of them
  null::set_reply("lock", "");
  press(Role::button, k_open);
  EXPECT_EQ(null::asked("unlock").find("title Open your key\n"), 0U);
  EXPECT_NE(null::asked("openSealed").find(' '), std::string::npos);
  EXPECT_EQ(told("counts/0"), "Sealed, not opened by this key: 30.");
  EXPECT_EQ(app().desk.intake.sealed_count(), k_people);
  EXPECT_NE(null::find(Role::button, k_open), nullptr);  // another key can be tried
}

TEST(DeskSeal, a_key_that_is_not_opened_changes_nothing) {
  read_at_desk(sealed_runs().codes);
  null::set_reply("unlock", "");  // called off
  press(Role::button, k_open);
  EXPECT_EQ(app().desk.intake.sealed_count(), k_people);
  EXPECT_EQ(told("told"), "");
  read_at_desk(sealed_runs().codes);  // no answer to "unlock": refused
  press(Role::button, k_open);
  EXPECT_EQ(told("told"), "That did not work. Pick your key file, or try another browser.");
  EXPECT_EQ(told("counts/0"), "Sealed, open with your key: 30.");
}

}  // namespace
}  // namespace rehale::screens
