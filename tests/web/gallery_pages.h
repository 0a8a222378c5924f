// The pages of the gallery: each shows one family of widgets, as a screen would use it.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::gallery {

int page_count();
std::string page_name(int page);
void forget();  // back to how each page begins
void draw_page(kit::Ui& ui, int page);
void after_start(int page);  // what a person does before the picture is taken

// Pages that stand in files of their own.
void draw_pads(kit::Ui& ui);
void draw_spans(kit::Ui& ui);

}  // namespace rehale::gallery
