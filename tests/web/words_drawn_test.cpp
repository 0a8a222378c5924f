// Words as they are drawn: none lies over others, none is broken in the middle, each control is
// called by its own, on every widget of the gallery and on the real screens in every language, in a
// narrow window with words twice as large (WCAG 2.2 1.4.4, 1.4.10).
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/web/gallery_pages.h"
#include "tests/web/kit_rig.h"
#include "web/kit/state.h"
#include "web/screens/app.h"
#include "web/shell/host_null.h"

namespace rehale {
namespace {

namespace null = shell::null;
using kit::DrawnText;
using shell::Rect;

// What of it can be seen through its scroll area.
Rect seen(const DrawnText& text) {
  if (text.clip.w <= 0) return text.rect;
  const float top = std::max(text.rect.y, text.clip.y);
  const float bottom = std::min(text.rect.y + text.rect.h, text.clip.y + text.clip.h);
  return {text.rect.x, top, text.rect.w, std::max(0.0F, bottom - top)};
}

bool overlap(const Rect& a, const Rect& b) {
  // The boxes hold room for accents and for letters that hang down.
  const float touch = 0.2F * std::min(a.h, b.h);
  const float x = std::min(a.x + a.w, b.x + b.w) - std::max(a.x, b.x);
  const float y = std::min(a.y + a.h, b.y + b.h) - std::max(a.y, b.y);
  return x > 1 && y > touch;
}

// WCAG 2.2 2.5.3: what can be pressed is called by the words that are drawn on it.
void check_names(const kit::Ui& ui) {
  for (const auto& node : null::mirror().nodes) {
    if (!rig::is_control(node) || node.role == shell::Role::spin) continue;
    const std::string told = node.name + '\n' + node.description;
    for (const DrawnText& text : ui.state().texts) {
      const float x = text.rect.x + text.rect.w / 2, y = text.rect.y + text.rect.h / 2;
      const Rect& box = node.rect;
      const bool on_it = x > box.x && x < box.x + box.w && y > box.y && y < box.y + box.h;
      if (!on_it || !(text.clip == node.clip)) continue;
      const bool is_number = text.words.find_first_not_of("-0123456789") == std::string::npos;
      EXPECT_TRUE(is_number || told.find(text.words) != std::string::npos)
          << "'" << text.words << "' on '" << node.name << "'";
    }
  }
}

void check_words(const kit::Ui& ui) {
  check_names(ui);
  const std::vector<DrawnText>& texts = ui.state().texts;
  ASSERT_FALSE(texts.empty());
  for (std::size_t a = 0; a < texts.size(); ++a) {
    const Rect one = texts[a].rect;
    EXPECT_FALSE(texts[a].breaks_a_word) << "words: " << texts[a].words;
    EXPECT_GE(one.x, -1) << "words: " << texts[a].words;
    EXPECT_LE(one.x + one.w, ui.width_px() + 1) << "words: " << texts[a].words;
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      if (!(texts[a].clip == texts[b].clip)) continue;  // moved apart later, or behind the actions
      EXPECT_FALSE(overlap(seen(texts[a]), seen(texts[b])))
          << "'" << texts[a].words << "' and '" << texts[b].words << "'";
    }
  }
}

struct Size {
  float width, height, scale;
};
constexpr Size k_sizes[] = {
    {320, 640, 2}, {320, 256, 1}, {360, 640, 1}, {640, 360, 2}, {768, 1024, 1.5F}};

std::string name_of(const Size& size) {
  return std::to_string(static_cast<int>(size.width)) + " x " +
         std::to_string(static_cast<int>(size.height)) + ", scale " + std::to_string(size.scale);
}

TEST(WordsDrawn, none_lie_over_others_in_the_gallery) {
  for (int page = 0; page < gallery::page_count(); ++page) {
    for (const Size& size : k_sizes) {
      SCOPED_TRACE(gallery::page_name(page) + " at " + name_of(size));
      gallery::forget();
      rig::open({.width = size.width, .height = size.height, .scale = size.scale},
                [page](kit::Ui& ui) { gallery::draw_page(ui, page); });
      gallery::after_start(page);
      rig::settle();
      check_words(rig::ui());
    }
  }
}

// ---- the real screens
std::unique_ptr<kit::Ui> g_ui;
std::unique_ptr<screens::App> g_app;

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

void open_app(const std::string& language, const std::string& family, const Size& size) {
  g_app.reset();
  null::reset();
  g_ui = std::make_unique<kit::Ui>();
  g_app = std::make_unique<screens::App>();
  ASSERT_TRUE(null::load_fonts(rig::font_path("400Regular"), rig::font_path("700Bold")));
  const auto give = [](const std::string& path) {
    null::set_file("content/" + path, support::read_text(REHALE_SOURCE_DIR "/assets/" + path));
  };
  give("library.json");
  give("text/" + language + ".json");
  for (const std::string file : {"procedure.json", "questions.json"})
    give("families/" + family + "/" + file);
  give("families/" + family + "/text." + language + ".json");
  null::set_viewport({size.width, size.height, 1});
  g_ui->set_look({.text_scale = size.scale});
  null::set_preferences({.reduced_motion = true, .language = language});
  null::set_option("seed", "5");
  shell::run({.start = start, .frame = frame});
  null::settle();
}

void look_here(const std::string& screen) {
  shell::redraw();
  null::settle();
  EXPECT_EQ(null::mirror().screen, screen);
  SCOPED_TRACE(screen);
  check_words(*g_ui);
}

// The first answer to choose, or what else there is to do with the question.
void answer() {
  for (const auto& node : null::mirror().nodes) {
    if (!rig::is_answer(node)) continue;
    null::press(std::string(node.id));
    null::settle();
    if (null::find_id("next") != nullptr && !null::find_id("next")->disabled) break;
  }
  const auto* next = null::find_id("next");
  null::press(next != nullptr && !next->disabled ? "next" : "unsure");
  null::settle();
}

void look_at_settings() {
  null::press("look-button");
  null::settle();
  ASSERT_NE(null::find_id("look"), nullptr);
  for (int n = 0; n < 12; ++n) {
    look_here("choose-device");
    null::act({shell::MirrorAction::Kind::scroll, "", g_ui->height_px() * 0.5});
    null::settle();
  }
  null::act({shell::MirrorAction::Kind::dismiss, "look"});
  null::settle();
}

int g_mended = 0;

void walk(const std::string& family) {
  look_here("choose-device");
  look_at_settings();
  g_app->pick_family(family);
  look_here("ready");
  g_app->to_where_it_goes();
  look_here("where-it-goes");
  g_app->where = screens::Where::ready;
  g_app->to_run_through();
  look_here("run");
  g_app->start_run_through();
  look_here("run");
  g_app->finish_run_through();
  look_here("run");
  g_app->where = screens::Where::ready;
  g_app->begin_run();
  for (int n = 0; n < 12 && g_app->where == screens::Where::question; ++n) {
    look_here("question");
    answer();
  }
  ASSERT_EQ(g_app->where, screens::Where::result);
  look_here("result");
  g_app->to_hand_over();
  look_here("hand-over");
  g_app->where = screens::Where::result;
  if (!g_app->session.advice().to_mend.empty()) {
    g_app->where = screens::Where::mend;
    look_here("mend");
    ++g_mended;
  }
  g_app->to_about();
  look_here("about");
}

TEST(WordsDrawn, none_lie_over_others_on_the_real_screens) {
  for (const std::string language : {"en", "es", "pt"}) {
    for (const auto& family : support::shipped_families()) {
      for (const Size& size : {k_sizes[0], k_sizes[1], k_sizes[3]}) {
        if (language != "en" && !(size.width == 320 && size.scale == 2)) continue;  // the hardest
        SCOPED_TRACE(language + ", " + family + " at " + name_of(size));
        open_app(language, family, size);
        walk(family);
      }
    }
  }
  EXPECT_GT(g_mended, 0);
}

}  // namespace
}  // namespace rehale
