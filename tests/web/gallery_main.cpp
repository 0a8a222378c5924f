// Every widget on a page to look at: rehale_gallery REGULAR.ttf BOLD.ttf FOLDER writes one PNG for
// each page, size, ground and text scale. For eyes only; kit_*_test.cpp checks what can be checked.
#include <imgui.h>

#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "tests/web/gallery_pages.h"
#include "tests/web/raster.h"
#include "web/kit/kit.h"
#include "web/shell/host_null.h"

namespace {

using namespace rehale;

struct Size {
  const char* name;
  float width, height, density;
};

std::unique_ptr<kit::Ui> g_ui;
int g_page = 0;

void start() {
  const shell::Fonts fonts = shell::take_fonts();
  g_ui->load_fonts(fonts.regular, fonts.bold);
}

void frame() {
  g_ui->begin_frame();
  gallery::draw_page(*g_ui, g_page);
  g_ui->end_frame();
}

struct Shot {
  Size size;
  bool dark;
  float scale;
};

void shoot(const std::string& folder, const Shot& shot, int page, char** fonts) {
  g_ui = nullptr;
  shell::null::reset();
  g_ui = std::make_unique<kit::Ui>();
  gallery::forget();
  shell::null::load_fonts(fonts[0], fonts[1]);
  shell::null::set_viewport({shot.size.width, shot.size.height, shot.size.density});
  shell::null::set_preferences({.dark = shot.dark, .reduced_motion = true});
  g_page = page;
  g_ui->set_look({.text_scale = shot.scale > 1 ? shot.scale : 0});
  shell::null::set_now(1000);
  shell::run({start, frame, nullptr, nullptr});
  shell::null::settle();
  gallery::after_start(page);
  shell::null::settle();
  const std::string name = folder + "/" + gallery::page_name(page) + "-" + shot.size.name +
                           (shot.dark ? "-dark" : "-light") + (shot.scale > 1 ? "-x2" : "") +
                           ".png";
  if (!raster::write_png(name, raster::paint(*ImGui::GetDrawData(), shot.size.density))) {
    std::fprintf(stderr, "cannot write %s\n", name.c_str());
  }
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 4) {
    std::fprintf(stderr, "usage: rehale_gallery REGULAR.ttf BOLD.ttf FOLDER [PAGE]\n");
    return 2;
  }
  const std::vector<Size> sizes{{"phone", 360, 640, 1.5F},
                                {"small", 320, 480, 1.5F},
                                {"landscape", 740, 360, 1},
                                {"tablet", 768, 1024, 1},
                                {"desk", 1920, 1080, 1}};
  const std::string only = count > 4 ? arguments[4] : "";
  for (int page = 0; page < gallery::page_count(); ++page) {
    if (!only.empty() && gallery::page_name(page) != only) continue;
    for (const Size& size : sizes) {
      for (const bool dark : {false, true}) {
        for (const float scale : {1.0F, 2.0F})
          shoot(arguments[3], {size, dark, scale}, page, arguments + 1);
      }
    }
  }
  g_ui = nullptr;
  shell::null::reset();
}
