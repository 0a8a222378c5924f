// The educator's desk on the real screens with the null host: in by its address and from Help, an
// invented group read piece by piece, lists, one person, the group's tables, filters, files.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/support/demo_group.h"
#include "tests/web/app_rig.h"
#include "web/screens/desk_tables.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using shell::Role;

using rig::press;

void open_page(const char* desk = "1") { rig::open_app({shell::k_option_desk, desk}); }

// Everybody holds a powder inhaler with a lever; every second answers in Portuguese, where
// 'not-into-device' is planted (tests/support/demo_group.h).
const std::string& group() {
  static const std::string codes = [] {
    const auto course = rig::page_course("powder-lever");
    std::string all;
    support::demo_group({.people = 40, .other_share = .5, .planted_share = 1}, {course.get()},
                        [&all](const auto& made, const auto& result) {
                          all += *exchange::write_result(result.head, result.log, made.family);
                          all += '\n';
                        });
    return all;
  }();
  return codes;
}

std::size_t lines(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count(text, '\n'));
}

// As the page does: the window gives "read", then pieces; the null host gives one piece over and
// over, so the app is fed by hand.
void read(const std::string& text) {
  null::set_reply("deskAsk", "read");
  null::set_reply("deskNext", "end 1000 0 -\n");
  press(Role::button,
        rig::app().desk.intake.records().empty() ? "Add results" : "Add more results");
  exchange::Intake::Courses courses;
  for (const auto& family : support::shipped_families())
    courses.push_back(rig::app().content.family(family)->course);
  rig::app().desk.begin_reading(courses);
  EXPECT_TRUE(rig::app().desk.take("text 500 1 Pasted text\n" + text));
  rig::app().desk.end_reading();
  shell::redraw();
  null::settle();
}

void open_group() {
  open_page();
  press(Role::button, "Read results");
  read(group());
  ASSERT_EQ(rig::app().desk.intake.records().size(), lines(group()));
}

TEST(Desk, has_an_address_of_its_own_and_a_way_in_from_help) {
  open_page();
  EXPECT_EQ(null::mirror().screen, "desk");
  press(Role::button, "To the self-check");
  EXPECT_EQ(rig::app().where, Where::choose);
  press(Role::button, "Help and about");
  press(Role::button, "For educators");
  EXPECT_EQ(null::mirror().screen, "desk");
}

TEST(Desk, is_not_offered_in_the_middle_of_a_check) {
  open_page("");
  ASSERT_EQ(rig::app().where, Where::choose);
  press(Role::button, "Spray inhaler");
  press(Role::button, "Start");
  press(Role::button, "Help and about");
  EXPECT_EQ(null::find(Role::button, "For educators"), nullptr);
  rig::app().to_desk();
  EXPECT_NE(rig::app().where, Where::desk);
}

TEST(Desk, asks_the_page_for_text_in_the_words_of_the_interface) {
  open_page();
  press(Role::button, "Read results");
  null::set_reply("deskAsk", "");  // the window was closed
  press(Role::button, "Add results");
  EXPECT_EQ(null::asked("deskAsk").find("Add results\nCodes or links, one a line\n"), 0U);
  EXPECT_EQ(lines(null::asked("deskAsk")), 21U);  // web/js/desk.js counts on 22 sentences
  EXPECT_EQ(rig::app().desk.work(), Desk::Work::none);
}

TEST(Desk, reads_piece_by_piece_and_stops_when_told) {
  Desk desk;
  desk.begin_reading({});
  EXPECT_TRUE(desk.take("text 120 1 a file with spaces.txt\nno code here\n"));
  EXPECT_EQ(desk.percent(), 12);
  EXPECT_EQ(desk.intake.lines_without(), 1U);
  EXPECT_TRUE(desk.take("long 300 0 big.json\n"));
  EXPECT_TRUE(desk.take("text 400 7 list\nR1abcdefghijklmnop\n"));
  ASSERT_EQ(desk.intake.unread().size(), 2U);
  EXPECT_EQ(desk.intake.unread()[1].place.line, 7U);
  const int heap = desk.heap();
  desk.end_reading();
  EXPECT_NE(desk.heap(), heap);  // pieces that still come are of an earlier heap
  EXPECT_FALSE(desk.add_up());
  EXPECT_EQ(desk.work(), Desk::Work::none);
  for (const char* odd : {"", "end", "text", "x 1 2 3\ny", "end 1000 0 -\n"}) {
    Desk other;
    other.begin_reading({});
    EXPECT_EQ(other.take(odd), std::string(odd) == "text") << odd;
  }
}

TEST(Desk, tells_of_each_picture_why_it_gave_nothing_and_of_codes_which_one_it_was) {
  open_page();
  press(Role::button, "Read results");
  const std::string code = group().substr(0, group().find('\n'));
  read("");
  Desk& desk = rig::app().desk;
  EXPECT_TRUE(desk.take("codes 100 0 Camera\nhttps://page.invalid/#r=" + code + "\nWIFI:S:home"));
  for (const char* chunk : {"no-code 200 0 a.png\n", "large 300 0 b.png\n",
                            "no-picture 400 0 c.gif\n", "no-reader 500 0 d.png\n"}) {
    EXPECT_TRUE(desk.take(chunk)) << chunk;
  }
  desk.end_reading();
  shell::redraw();
  null::settle();
  EXPECT_EQ(desk.intake.records().size(), 1U);
  press(Role::disclosure, "Could not be read: 5");
  const char* said[] = {
      "Camera, code 2: This QR code is from something else. It starts with WIFI:S:home",
      "a.png: No QR code was found. Take the photo closer, in good light.",
      "b.png: This picture is too large. Use one below 30 MB and 40 megapixels.",
      "c.gif: This picture cannot be opened. Save it as PNG or JPEG.",
      "d.png: What reads QR codes did not arrive. Check that you are online."};
  for (std::size_t n = 0; n < std::size(said); ++n) {
    const auto* item = null::find_id("unread-list/" + std::to_string(n));
    ASSERT_NE(item, nullptr);
    EXPECT_EQ(item->name, said[n]);
  }
}

TEST(Desk, says_what_was_read_what_came_twice_and_what_was_broken) {
  open_group();
  EXPECT_EQ(null::asked("deskNext"), std::to_string(Portions().letters()));
  read(group() + "R1abcdefghijklmnop\n");
  EXPECT_EQ(rig::app().desk.intake.copies(), lines(group()));
  press(Role::disclosure, "Could not be read: 1");
  const auto* list = null::find_id("unread-list/0");
  ASSERT_NE(list, nullptr);
  EXPECT_EQ(list->name, "Pasted text, line " + std::to_string(lines(group()) + 1) +
                            ": A letter was lost or changed. Copy it again. It starts with "
                            "R1abcdefghij");
}

TEST(Desk, the_planted_weakness_comes_first_and_the_filter_parts_the_languages) {
  open_group();
  press(Role::button, "See the group");
  press(Role::disclosure, "Shown now: Powder inhaler with a lever");
  press(Role::radio, "First check");
  press(Role::radio, "Português");
  const auto portuguese = teach_table(rig::app()).rows.front();
  EXPECT_NE(portuguese.label.find("1. "), std::string::npos);
  EXPECT_EQ(portuguese.id, [] {
    const auto& techniques = support::shipped_course("powder-lever")->family.techniques;
    for (std::size_t k = 0; k < techniques.size(); ++k) {
      if (techniques[k].id == "not-into-device") return std::to_string(k);
    }
    return std::string();
  }());
  // The mirror's table says the same as the bars.
  const auto* head = null::find_id("teach/" + portuguese.id + "/head");
  ASSERT_NE(head, nullptr);
  EXPECT_EQ(head->name, portuguese.label);
  const auto* cell = null::find_id("teach/" + portuguese.id + "/0");
  ASSERT_NE(cell, nullptr);
  EXPECT_EQ(cell->name, portuguese.cells[0]);
  EXPECT_EQ(portuguese.cells.size() + 1, teach_table(rig::app()).heads.size());
}

TEST(Desk, cells_of_fewer_than_five_are_hidden_and_said_so) {
  open_page();
  press(Role::button, "Read results");
  std::size_t end = 0;
  for (int n = 0; n < 4; ++n) end = group().find('\n', end) + 1;
  read(group().substr(0, end));
  press(Role::button, "See the group");
  for (const auto& table :
       {teach_table(rig::app()), change_table(rig::app()), items_table(rig::app())}) {
    ASSERT_FALSE(table.rows.empty());
    for (const auto& row : table.rows) {
      EXPECT_TRUE(row.bars.empty()) << row.label;
      EXPECT_EQ(row.words.front(), "Hidden: fewer than 5") << row.label;
      EXPECT_EQ(row.cells.size() + 1, table.heads.size());
    }
  }
  const std::string csv = techniques_csv(rig::app());
  EXPECT_NE(csv.find(",,,,,,,,,,\r\n"), std::string::npos) << csv;
}

TEST(Desk, the_educators_own_order_wins_and_can_be_taken_back) {
  open_group();
  press(Role::button, "See the group");
  const auto before = teach_table(rig::app());
  press(Role::disclosure, "Change the order");
  const std::string last = before.rows.back().label.substr(before.rows.back().label.find(' ') + 1);
  press(Role::button, "Put first: " + last);
  EXPECT_EQ(teach_table(rig::app()).rows.front().label, "1. " + last);
  EXPECT_EQ(teach_csv(rig::app()).find("\r\n1,") != std::string::npos, true);
  press(Role::button, "Back to the order by key");
  EXPECT_EQ(teach_table(rig::app()).rows.front().label, before.rows.front().label);
}

TEST(Desk, every_table_is_saved_as_csv_with_its_heads) {
  open_group();
  press(Role::button, "See the group");
  null::set_reply("save", "");
  for (const char* name :
       {"Save this order (CSV)", "Save the steps (CSV)", "Save each result (CSV)"})
    press(Role::button, name);
  const std::string results = null::asked("save");
  EXPECT_EQ(results.find("rehale-powder-lever-results.csv\n\xEF\xBB\xBF"), 0U);
  EXPECT_EQ(lines(results), lines(group()) + 2);  // the name, the heads
  press(Role::button, "Before and after");
  press(Role::button, "Save this table (CSV)");
  EXPECT_NE(null::asked("save").find("p (exact McNemar)"), std::string::npos);
  press(Role::button, "How the questions work");
  press(Role::button, "Save this table (CSV)");
  EXPECT_NE(null::asked("save").find("Tells people apart"), std::string::npos);
  EXPECT_EQ(rig::app().desk.told, "hand/saved");
}

TEST(Desk, one_person_is_shown_with_reasons_and_change_and_goes_back_to_the_list) {
  open_group();
  press(Role::button, "See one by one");
  const Desk& desk = rig::app().desk;
  ASSERT_EQ(desk.people().size(), lines(group()));
  const auto again = std::ranges::find_if(
      desk.people(), [&desk](std::size_t n) { return desk.before(n).has_value(); });
  ASSERT_NE(again, desk.people().end());
  ASSERT_TRUE(rig::app().open_desk_person(*again));
  shell::redraw();
  null::settle();
  EXPECT_EQ(null::mirror().screen, "desk-person");
  EXPECT_NE(null::find(Role::heading, "Since the check before"), nullptr);
  EXPECT_NE(null::find(Role::heading, "Teach again first"), nullptr);
  EXPECT_NE(null::find_id("all/0"), nullptr);
  null::set_reply("print", "");
  press(Role::button, "Print one page");
  EXPECT_NE(null::asked("print").find("qr https://page.invalid/rehale/#r=R1"), std::string::npos);
  null::set_reply("save", "");
  press(Role::button, "Save for a health record (FHIR)");
  EXPECT_NE(null::asked("save").find("\"resourceType\""), std::string::npos);
  press(Role::button, "Back to the list");
  EXPECT_EQ(null::mirror().screen, "desk-people");
  EXPECT_FALSE(rig::app().session.running());
  EXPECT_EQ(rig::app().export_run(), "");
}

TEST(Desk, the_list_turns_in_pages_and_sorts) {
  open_group();
  press(Role::button, "See one by one");
  EXPECT_NE(null::find_id("result-19"), nullptr);
  EXPECT_EQ(null::find_id("result-20"), nullptr);
  press(Role::button, "Next page");
  EXPECT_EQ(rig::app().desk.page, 1U);
  press(Role::disclosure, "Shown now: All kinds");
  press(Role::radio, "Newest first");
  EXPECT_EQ(rig::app().desk.page, 0U);
  const auto& records = rig::app().desk.intake.records();
  const auto& people = rig::app().desk.people();
  for (std::size_t n = 1; n < people.size(); ++n)
    EXPECT_GE(records[people[n - 1]].day, records[people[n]].day);
}

TEST(Desk, keeps_what_was_read_in_another_language) {
  open_group();
  press(Role::button, "See the group");
  rig::app().pick_language("pt");
  null::settle();
  EXPECT_EQ(null::mirror().screen, "desk-group");
  EXPECT_NE(null::find(Role::heading, "O que ensinar primeiro"), nullptr);
  EXPECT_GT(teach_table(rig::app()).rows.front().label.size(), 5U);
  EXPECT_EQ(null::error_title(), "");
}

}  // namespace
}  // namespace rehale::screens
