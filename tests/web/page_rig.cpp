#include "tests/web/page_rig.h"

#include <gtest/gtest.h>

#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/web/kit_rig.h"
#include "web/shell/host_null.h"

namespace rehale::rig {

namespace null = shell::null;
using screens::App;

namespace {

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

void serve_content() {
  const std::string assets = REHALE_SOURCE_DIR "/assets/";
  const auto give = [&assets](const std::string& path) {
    null::set_file("content/" + path, support::read_text(assets + path));
  };
  for (const char* path : {"library.json", "text/en.json", "text/es.json", "text/pt.json"})
    give(path);
  for (const auto& family : support::shipped_families()) {
    for (const char* file : {"procedure.json", "questions.json", "care.json", "text.en.json",
                             "text.es.json", "text.pt.json"})
      give("families/" + family + "/" + file);
  }
}

}  // namespace

App& app() { return *g_app; }

void open_page(const Opening& opening) {
  g_app.reset();
  null::reset();
  g_ui = std::make_unique<kit::Ui>();
  g_app = std::make_unique<App>();
  ASSERT_TRUE(null::load_fonts(rig::font_path("400Regular"), rig::font_path("700Bold")));
  serve_content();
  null::set_today(opening.today);
  null::set_option("lang", opening.language);
  null::set_option("family", opening.family);
  null::set_option("seed", "5");
  null::set_option(shell::k_option_care, opening.care);
  null::set_option(shell::k_option_code, opening.result);
  null::set_option(shell::k_option_address, "https://page.invalid/rehale/");
  if (!opening.no_storage) null::set_reply("kept", opening.kept);
  shell::run({.start = start, .frame = frame});
  null::settle();
}

void press_id(const std::string& id) {
  ASSERT_NE(null::find_id(id), nullptr) << id;
  null::press(id);
  null::settle();
}

void type(const std::string& id, double number) {
  ASSERT_NE(null::find_id(id), nullptr) << id;
  null::act({shell::MirrorAction::Kind::set_number, id, number});
  null::settle();
}

std::string said(const std::string& id) {
  const auto* node = null::find_id(id);
  return node == nullptr ? "" : node->name;
}

std::string all_said() {
  std::string all;
  for (const auto& node : null::mirror().nodes) all += node.name + "\n";
  return all;
}

}  // namespace rehale::rig
