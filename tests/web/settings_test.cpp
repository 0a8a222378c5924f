// The settings: what the system asks for holds until the person chooses
// (WCAG 2.2: 1.4.4, 1.4.6, 2.3.3; the media features of the CSS Media Queries 5 draft), what is
// kept is what is read, and rubbish does no harm.
#include <gtest/gtest.h>

#include <memory>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/web/kit_rig.h"
#include "web/screens/app.h"
#include "web/screens/kept_settings.h"
#include "web/shell/host_null.h"

namespace rehale::screens {
namespace {

namespace null = shell::null;
using kit::Look;
using kit::Scheme;
using kit::Wish;
using shell::Role;

TEST(KeptSettings, what_is_written_is_read) {
  for (int n = 0; n < 3 * 3 * 3 * 2 * 2 * 2; ++n) {
    KeptSettings said;
    said.look.ground = static_cast<Look::Ground>(n % 3);
    said.look.more_contrast = static_cast<Wish>(n / 3 % 3);
    said.look.still = static_cast<Wish>(n / 9 % 3);
    said.look.left_hand = n / 27 % 2 == 1;
    said.look.read_slowly = n / 54 % 2 == 1;
    said.look.text_scale = n / 108 == 1 ? 1.75F : 0;
    said.look.loudness = static_cast<Look::Loudness>((n + n / 27) % 3);
    said.language = n % 2 == 1 ? "pt" : "";
    const auto heard = read_settings(write_settings(said));
    ASSERT_TRUE(heard) << write_settings(said);
    EXPECT_EQ(heard->look, said.look) << write_settings(said);
    EXPECT_EQ(heard->language, said.language);
  }
}

TEST(KeptSettings, what_is_no_settings_is_refused) {
  for (const char* text :
       {"", " ", "2 text=150", "null", "{\"text\":2}", "11", "ground=dark", "\x01"})
    EXPECT_FALSE(read_settings(text)) << text;
}

TEST(KeptSettings, parts_that_make_no_sense_are_passed_over) {
  const auto heard = read_settings(
      "1 ground=pink contrast= text=999 text=1e9 text=-50 = still still=maybe language=../x "
      "language=EN hand=both colour=red  volume=11 slowly=yes");
  ASSERT_TRUE(heard);
  EXPECT_EQ(heard->look, Look{.read_slowly = true});
  EXPECT_EQ(heard->language, "");
}

TEST(Settings, the_systems_wish_is_followed_until_the_person_chooses) {
  rig::open({}, [](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    kit::heading(ui, "h", "Heading");
    kit::end_screen(ui);
  });
  rig::ui().set_look({});
  const auto system = [](const shell::Preferences& wish) {
    null::set_preferences(wish);
    rig::settle();
    return rig::ui().scheme();
  };
  EXPECT_EQ(system({}), Scheme::light);
  EXPECT_EQ(system({.dark = true}), Scheme::dark);
  EXPECT_EQ(system({.more_contrast = true}), Scheme::light_contrast);
  EXPECT_EQ(system({.dark = true, .forced_colors = true}), Scheme::dark_contrast);
  EXPECT_FALSE(rig::ui().reduced_motion());
  system({.reduced_motion = true, .root_font_px = 24});
  EXPECT_TRUE(rig::ui().reduced_motion());
  EXPECT_FLOAT_EQ(rig::ui().text_scale(), 1.5F);

  rig::ui().set_look({.ground = Look::Ground::dark,
                      .more_contrast = Wish::no,
                      .still = Wish::no,
                      .text_scale = 2});
  EXPECT_EQ(system({.more_contrast = true, .forced_colors = true, .reduced_motion = true}),
            Scheme::dark);
  EXPECT_FALSE(rig::ui().reduced_motion());
  EXPECT_FLOAT_EQ(rig::ui().text_scale(), 2);
}

// ---- on the real screens
std::unique_ptr<kit::Ui> g_ui;
std::unique_ptr<App> g_app;

void start() {
  const shell::Fonts fonts = shell::take_fonts();
  ASSERT_TRUE(g_ui->load_fonts(fonts.regular, fonts.bold));
  g_app->ui = g_ui.get();
  g_app->start();
}

void frame() {
  g_ui->begin_frame();
  g_app->frame();
  g_ui->end_frame();
}

void give(const std::string& path) {
  null::set_file("content/" + path, support::read_text(REHALE_SOURCE_DIR "/assets/" + path));
}

struct Visit {
  std::string kept, link_language;
  shell::Preferences system;
};

void open_page(const Visit& visit = {}) {
  g_app.reset();
  null::reset();
  g_ui = std::make_unique<kit::Ui>();
  g_app = std::make_unique<App>();
  ASSERT_TRUE(null::load_fonts(rig::font_path("400Regular"), rig::font_path("700Bold")));
  for (const char* path : {"library.json", "text/en.json", "text/es.json", "text/pt.json"})
    give(path);
  for (const auto& family : support::shipped_families()) {
    for (const char* file : {"procedure.json", "questions.json", "text.en.json", "text.es.json"})
      give("families/" + family + "/" + file);
  }
  null::set_preferences(visit.system);
  if (!visit.kept.empty()) null::set_option(shell::k_option_settings, visit.kept);
  if (!visit.link_language.empty()) null::set_option("lang", visit.link_language);
  null::set_reply(shell::k_ask_keep, "");
  null::set_reply(shell::k_ask_read, "");
  shell::run({.start = start, .frame = frame});
  null::settle();
}

void press(Role role, std::string_view name) {
  const auto* node = null::find(role, name);
  ASSERT_NE(node, nullptr) << name;
  null::press(std::string(node->id));
  null::settle();
}

const std::string& language() { return null::mirror().language; }

TEST(Settings, nothing_is_kept_until_the_person_agrees) {
  open_page();
  press(Role::button, "Settings");
  press(Role::radio, "Dark");
  EXPECT_EQ(null::asked("keep"), "");
  press(Role::checkbox, "Remember this on this device");
  EXPECT_EQ(null::asked("keep"), "settings\n1 ground=dark");
  press(Role::checkbox, "Stronger contrast");
  press(Role::radio, "Left hand");
  press(Role::radio, "Español");
  EXPECT_EQ(null::asked("keep"), "settings\n1 ground=dark contrast=yes hand=left language=es");
  press(Role::checkbox, "Guardar esto en mi aparato");
  EXPECT_EQ(null::asked("keep"), "settings\n");
  EXPECT_TRUE(g_ui->look().left_hand) << "what holds now stays until they leave";
}

TEST(Settings, what_was_kept_holds_from_the_first_frame) {
  open_page({.kept = "1 ground=dark contrast=yes still=yes text=175 language=es"});
  EXPECT_EQ(language(), "es");
  EXPECT_EQ(g_ui->scheme(), Scheme::dark_contrast);
  EXPECT_TRUE(g_ui->reduced_motion());
  EXPECT_FLOAT_EQ(g_ui->text_scale(), 1.75F);
  EXPECT_TRUE(g_ui->remembered());
  EXPECT_EQ(null::asked("keep"), "") << "nothing has changed";
}

TEST(Settings, one_tap_gives_all_back_to_the_device) {
  open_page({.kept = "1 ground=dark text=200 hand=left"});
  null::press("look-button");
  null::settle();
  press(Role::button, "Go back to what my device asks for");
  EXPECT_EQ(g_ui->look(), Look{});
  EXPECT_EQ(null::asked("keep"), "settings\n1");
  EXPECT_EQ(null::find_id("look/reset"), nullptr);
}

TEST(Settings, a_browser_that_keeps_nothing_says_so_and_goes_on) {
  open_page();
  null::forget_reply(shell::k_ask_keep);
  press(Role::button, "Settings");
  press(Role::radio, "Dark");
  press(Role::checkbox, "Remember this on this device");
  EXPECT_FALSE(g_ui->remembered());
  EXPECT_NE(null::find(Role::status,
                       "This browser does not let us keep them. They hold until you leave."),
            nullptr);
  EXPECT_EQ(g_ui->scheme(), Scheme::dark);
}

TEST(Settings, rubbish_that_was_kept_changes_nothing) {
  open_page({.kept = "{\"ground\":\"dark\"}"});
  EXPECT_EQ(g_ui->look(), Look{});
  EXPECT_FALSE(g_ui->remembered());
  EXPECT_EQ(null::asked("keep"), "") << "nor is it taken away unasked";
}

TEST(Settings, the_language_is_the_links_then_the_persons_then_the_first_the_system_names) {
  open_page({.system = {.language = "fi-FI,pt-BR,en"}});
  EXPECT_EQ(language(), "pt");
  open_page({.kept = "1 language=es", .system = {.language = "pt-BR"}});
  EXPECT_EQ(language(), "es");
  open_page({.kept = "1 language=es", .link_language = "pt", .system = {.language = "en"}});
  EXPECT_EQ(language(), "pt");
  open_page({.system = {.language = "fi,sv"}});
  EXPECT_EQ(language(), "en");
}

TEST(Settings, the_systems_language_is_followed_while_running_but_not_against_a_choice) {
  open_page({.system = {.language = "en-GB"}});
  null::set_preferences({.language = "es-MX,en"});
  null::settle();
  EXPECT_EQ(language(), "es");
  press(Role::button, "Português");
  EXPECT_EQ(language(), "pt");
  null::set_preferences({.language = "en"});
  null::settle();
  EXPECT_EQ(language(), "pt");
}

TEST(Settings, reading_aloud_is_offered_where_the_device_speaks_the_language) {
  open_page();
  EXPECT_EQ(null::find(Role::button, "Read aloud"), nullptr);
  null::set_voice({.languages = "de fr"});
  null::settle();
  EXPECT_EQ(null::find(Role::button, "Read aloud"), nullptr);
  press(Role::button, "Settings");
  EXPECT_EQ(null::find(Role::radio, "Quiet"), nullptr);
  EXPECT_NE(null::find(Role::paragraph,
                       "We found no voice on this device for this language. So we "
                       "cannot read to you here."),
            nullptr);
  null::set_voice({.languages = "en es"});
  null::settle();
  press(Role::checkbox, "Read more slowly");
  press(Role::button, "Close");
  press(Role::button, "Read aloud");
  EXPECT_EQ(null::asked("read"), "slowly");
  press(Role::button, "Settings");
  press(Role::radio, "Quiet");
  press(Role::button, "Close");
  press(Role::button, "Read aloud");
  EXPECT_EQ(null::asked("read"), "slowly quiet");
  null::set_voice({.languages = "en es", .speaking = true});
  null::settle();
  press(Role::button, "Stop reading");
  EXPECT_EQ(null::asked("read"), "stop");
  press(Role::button, "Settings");
  press(Role::checkbox, "Remember this on this device");
  EXPECT_EQ(null::asked("keep"), "settings\n1 slowly=yes volume=quiet");
  press(Role::button, "Close");
  null::set_voice({.languages = "es"});  // a voice that went away
  null::settle();
  EXPECT_EQ(null::find_id("read-aloud"), nullptr);
}

// The hand: what is pressed stands on its side.
TEST(Settings, the_hand_decides_on_which_side_things_are_pressed) {
  std::vector<std::string> order{"a", "b"};
  rig::open({.width = 1280, .height = 800}, [&order](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    kit::picture(ui, {.id = "picture", .alternative = "A face.", .draw = nullptr});
    kit::heading(ui, "h", "Heading");
    kit::Ordering ordering{.id = "o", .name = "Order", .cards = {}};
    for (const std::string& id : order) ordering.cards.push_back({.id = id, .label = "Card " + id});
    kit::ordering(ui, ordering);
    kit::end_screen(ui, {.main = {.id = "go", .label = "Go"}});
  });
  const auto x = [](std::string_view id) { return rig::find_id(id).rect.x; };
  EXPECT_GT(x("o/a/up"), x("o/a/pick"));
  EXPECT_GT(x("go"), x("picture"));
  rig::ui().set_look({.text_scale = 1, .left_hand = true});
  rig::settle();
  EXPECT_LT(x("o/a/up"), x("o/a/pick"));
  EXPECT_LT(x("go"), x("picture"));
}

}  // namespace
}  // namespace rehale::screens
