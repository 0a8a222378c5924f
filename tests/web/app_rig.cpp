#include "tests/web/app_rig.h"

#include <gtest/gtest.h>

#include "core/catalog/content_id.h"
#include "tests/support/bank_json.h"
#include "tests/support/courses.h"

namespace rehale::rig {

namespace {

namespace null = shell::null;

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

std::string asset(const std::string& path) {
  return support::read_text(REHALE_SOURCE_DIR "/assets/" + path);
}

// The page reads content/…; the assets have the same files (scenes are missing: pictures wait).
void serve_content() {
  const auto give = [](const std::string& path) { null::set_file("content/" + path, asset(path)); };
  for (const char* path : {"library.json", "text/en.json", "text/es.json", "text/pt.json"})
    give(path);
  for (const auto& family : support::shipped_families()) {
    for (const char* file : {"procedure.json", "questions.json", "care.json", "text.en.json",
                             "text.es.json", "text.pt.json"})
      give("families/" + family + "/" + file);
  }
}

}  // namespace

screens::App& app() { return *g_app; }

void open_with(const std::function<void()>& prepare, Day today) {
  g_app.reset();
  null::reset();
  g_ui = std::make_unique<kit::Ui>();
  g_app = std::make_unique<screens::App>();
  ASSERT_TRUE(null::load_fonts(font_path("400Regular"), font_path("700Bold")));
  serve_content();
  null::set_today(today);
  null::set_option(shell::k_option_address, "https://page.invalid/rehale/");
  null::set_option(shell::k_option_build, "0123456789ab");
  prepare();
  shell::run({.start = start, .frame = frame});
  null::settle();
}

void open_app(const Address& address, Day today) {
  const auto prepare = [&address] {
    null::set_reply("qr", "101\n010\n110");
    null::set_option(address.option, address.value);
  };
  open_with(prepare, today);
}

void press(shell::Role role, const std::string& name) {
  const auto* node = null::find(role, name);
  ASSERT_NE(node, nullptr) << name;
  null::press(node->id);
  null::settle();
}

std::string told(std::string_view id) {
  const auto* node = null::find_id(id);
  return node == nullptr ? std::string() : node->name;
}

std::shared_ptr<const check::Course> page_course(const std::string& family) {
  const catalog::ContentFile procedure{"", asset("families/" + family + "/procedure.json")};
  const catalog::ContentFile questions{"", asset("families/" + family + "/questions.json")};
  return std::make_shared<const check::Course>(*check::make_course(
      support::shipped_course(family)->family, catalog::content_id(procedure, questions)));
}

}  // namespace rehale::rig
