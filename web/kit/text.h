// Words on the page: headings, paragraphs, captions, bullets. Wraps at the column and at 60
// characters; every call draws and records. Must not know screens.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

enum class Heading : unsigned char {
  title,     // h1, 32 px
  question,  // h1, 26 px
  section,   // h2, 22 px
};
// The h1 of a screen takes the focus when the screen comes up.
void heading(Ui& ui, std::string_view id, std::string_view text, Heading kind = Heading::title);

enum class Ink : unsigned char { full, soft };
void paragraph(Ui& ui, std::string_view id, std::string_view text, Ink ink = Ink::full);
void caption(Ui& ui, std::string_view id, std::string_view text);
void bullets(Ui& ui, std::string_view id, const std::vector<std::string>& lines);

// A line that stays on the page and is read out politely when its text changes (role status).
void status_line(Ui& ui, std::string_view id, std::string_view text);

// A calm place-holder for something on its way; nothing moves.
void skeleton(Ui& ui, std::string_view id, std::string_view text);

}  // namespace rehale::kit
