#include "tests/web/gallery_pages.h"

#include <imgui.h>

#include <algorithm>
#include <array>

#include "web/kit/kit.h"
#include "web/kit/paint.h"
#include "web/shell/host_null.h"

namespace rehale::gallery {
namespace {

using kit::Rect;
using kit::Ui;

struct Kept {
  int chosen = 1;
  std::vector<bool> ticked{true, false, true, false};
  std::vector<std::string> order{"shake", "open", "out", "press", "hold"};
  kit::Timing timing;
  double days = 12;
  bool open = true, toggle = true, dialog = true;
};
Kept g_kept;

// A stand-in for a scene: a generic body with the one part that acts.
void draw_stand_in(Ui& ui, Rect rect) {
  const kit::Palette& p = ui.palette();
  ImDrawList* list = ui.draw_list();
  const float unit = std::min(rect.w, rect.h) / 10;
  const float x = rect.x + rect.w / 2, y = rect.y + rect.h / 2;
  kit::draw_box(list, {x - 2 * unit, y - 2 * unit, 4 * unit, 6 * unit}, {p.device, p.ink, 3, unit});
  kit::draw_box(list, {x - 1.2F * unit, y - 4.4F * unit, 2.4F * unit, 3 * unit},
                {p.main, p.ink, 3, unit / 2});
  kit::draw_box(list, {x + 1.4F * unit, y + 2 * unit, 2.6F * unit, 2 * unit},
                {p.device_shade, p.ink, 3, unit / 2});
}

kit::Progress third() { return {3, 12, "Question 3, up to 12"}; }

const kit::Actions k_check{.main = {.id = "go", .label = "Next question"},
                           .quiet = {.id = "unsure", .label = "I'm not sure"}};

void draw_question(Ui& ui) {
  kit::begin_screen(ui, {.id = "question", .title = "Question", .back = true, .progress = third()});
  kit::picture(ui, {.id = "picture", .alternative = "A spray inhaler.", .draw = draw_stand_in});
  kit::heading(ui, "ask", "How do you breathe in when you use it?", kit::Heading::question);
  g_kept.chosen =
      kit::one_of(ui,
                  {.id = "answers",
                   .name = "How do you breathe in?",
                   .options = {{.id = "slow", .label = "Slowly, for 3 to 5 seconds"},
                               {.id = "hard", .label = "Fast and hard, as far as I can go"},
                               {.id = "usual", .label = "As I breathe all the time"}}},
                  g_kept.chosen);
  kit::end_screen(ui, k_check);
}

void draw_several(Ui& ui) {
  kit::begin_screen(ui, {.id = "several", .title = "Question", .back = true, .progress = third()});
  kit::heading(ui, "ask", "What do you do before you breathe in?", kit::Heading::question);
  kit::caption(ui, "hint", "Tick all that you do.");
  g_kept.ticked =
      kit::several_of(ui,
                      {.id = "answers",
                       .name = "What do you do?",
                       .options = {{.id = "look", .label = "Look into the mouthpiece"},
                                   {.id = "wet", .label = "Wash the mouthpiece"},
                                   {.id = "out", .label = "Breathe out, away from it"},
                                   {.id = "none", .label = "Shake it, and turn it on its head"}}},
                      g_kept.ticked);
  kit::end_screen(ui, {.main = {.id = "go",
                                .label = "Check my answer",
                                .enabled = false,
                                .why_not = "Tick what you do first."},
                       .quiet = {.id = "unsure", .label = "I'm not sure"}});
}

void draw_revealed(Ui& ui) {
  kit::begin_screen(ui, {.id = "practice", .title = "Try it", .back = true});
  kit::heading(ui, "ask", "How do you breathe in when you use it?", kit::Heading::question);
  kit::several_of(
      ui,
      {.id = "answers",
       .name = "How?",
       .options = {{.id = "a",
                    .label = "Slowly, for 3 to 5 seconds",
                    .mark = kit::Mark::going_well},
                   {.id = "b",
                    .label = "Fast and hard",
                    .mark = kit::Mark::to_mend,
                    .note = "Fast air throws the spray on your throat. Next time, go slow."},
                   {.id = "c", .label = "Until my lungs are full", .mark = kit::Mark::missed},
                   {.id = "d", .label = "Through the nose"}},
       .locked = true},
      {true, true, false, false});
  kit::begin_card(ui, {.id = "told", .tone = kit::Tone::to_mend});
  kit::paragraph(ui, "why", "Next time, breathe in slowly. Slow air carries the spray deep.");
  kit::end_card(ui);
  kit::end_screen(ui, {.main = {.id = "go", .label = "Go on"},
                       .quiet = {.id = "more", .label = "Another one"}});
}

void draw_pictures(Ui& ui) {
  kit::begin_screen(ui, {.id = "pictures", .title = "Question", .back = true, .progress = third()});
  kit::heading(ui, "ask", "Which way up do you hold it?", kit::Heading::question);
  g_kept.chosen = kit::one_picture_of(
      ui,
      {.id = "answers",
       .name = "Which way up?",
       .options = {{.id = "up", .label = "Upright", .draw = draw_stand_in},
                   {.id = "down", .label = "Upside down", .draw = draw_stand_in},
                   {.id = "flat", .label = "Flat, on its side", .draw = draw_stand_in},
                   {.id = "tilt", .label = "Tilted", .draw = draw_stand_in}}},
      g_kept.chosen);
  kit::end_screen(ui, k_check);
}

std::string card_words(const std::string& id) {
  if (id == "shake") return "Shake it for 5 seconds";
  if (id == "open") return "Take the cap off";
  if (id == "out") return "Breathe out, away from it";
  return id == "press" ? "Press once as you breathe in" : "Hold your breath";
}

void draw_order(Ui& ui) {
  kit::begin_screen(ui, {.id = "order", .title = "Question", .back = true, .progress = third()});
  kit::heading(ui, "ask", "Put these steps in order.", kit::Heading::question);
  kit::Ordering cards{.id = "cards", .name = "Put these steps in order."};
  for (const std::string& id : g_kept.order)
    cards.cards.push_back({.id = id, .label = card_words(id)});
  g_kept.order = kit::ordering(ui, cards).order;
  kit::end_screen(ui, k_check);
}

void draw_numbers(Ui& ui) {
  kit::begin_screen(ui, {.id = "numbers", .title = "Question", .back = true, .progress = third()});
  kit::picture(ui, {.id = "picture", .alternative = "A counter.", .draw = draw_stand_in});
  kit::heading(ui, "ask", "The counter says 60. You take 4 puffs a day. How many days are left?",
               kit::Heading::question);
  g_kept.days = kit::stepper(
      ui, {.id = "days", .name = "Days left", .unit = "days", .min = 0, .max = 60}, g_kept.days);
  kit::end_screen(ui, k_check);
}

void draw_timing(Ui& ui) {
  kit::begin_screen(ui, {.id = "timing", .title = "Question", .back = true, .progress = third()});
  kit::heading(ui, "ask", "Hold your breath as long as you would.", kit::Heading::question);
  g_kept.timing = kit::timing_pad(ui, {.id = "pad", .name = "Hold your breath"}, g_kept.timing);
  kit::end_screen(ui, k_check);
}

void draw_choose(Ui& ui) {
  kit::begin_screen(ui, {.id = "choose", .title = "Choose"});
  kit::heading(ui, "title", "Which inhaler do you use?");
  kit::paragraph(ui, "lead", "Pick the one that looks like yours.", kit::Ink::soft);
  kit::card_grid(
      ui, {.id = "devices",
           .name = "Which?",
           .cards = {{"spray", "Spray inhaler",
                      "A metal can in a plastic case. You press it to spray.", draw_stand_in},
                     {"lever", "Powder inhaler with a lever", "You hold it flat and slide a lever.",
                      draw_stand_in},
                     {"cover", "Powder inhaler with a cover", "Opening the cover loads one dose.",
                      draw_stand_in},
                     {"mist", "Soft mist inhaler", "You turn the base, then press a button.",
                      draw_stand_in}}});
  kit::quiet_button(ui, {.id = "unknown", .label = "I don't know which I have"});
  kit::notice(ui, "danger", "Is it hard to breathe now? Use your action plan. Then call for help.");
  kit::caption(ui, "limits", "This page teaches. It does not look after your illness.");
  kit::end_screen(ui);
}

void draw_result(Ui& ui) {
  kit::begin_screen(ui, {.id = "result", .title = "Your result"});
  kit::heading(ui, "title", "What we learned");
  kit::paragraph(ui, "lead", "You do most of it well. These two things would help you most.");
  for (const char* id : {"one", "two"}) {
    kit::begin_card(ui, {.id = id, .tone = kit::Tone::to_mend});
    kit::heading(ui, std::string(id) + "-name", "A slow, deep breath in", kit::Heading::section);
    kit::paragraph(ui, std::string(id) + "-why", "Slow air carries the spray deep.");
    kit::quiet_button(ui, {.id = std::string(id) + "-show",
                           .label = "Show me how",
                           .icon = kit::Icon::chevron_right});
    kit::end_card(ui);
  }
  kit::begin_card(ui, {.id = "well", .tone = kit::Tone::going_well});
  kit::bullets(ui, "well-list",
               {"You shake it first.", "You breathe out first, away from it.",
                "You hold your breath, and you wait before the next puff."});
  kit::end_card(ui);
  kit::begin_card(ui, {.id = "care", .tone = kit::Tone::caution});
  kit::paragraph(ui, "care-text", "The leaflet of your own inhaler comes first.");
  kit::end_card(ui);
  g_kept.open = kit::disclosure(ui, {"why", "Why this one?"}, g_kept.open);
  if (g_kept.open) kit::paragraph(ui, "because", "Your answers point here most of all.");
  g_kept.toggle = kit::toggle_button(ui, {.id = "toggle", .label = "Read it to me"}, g_kept.toggle);
  kit::text_button(ui, {.id = "text", .label = "Start over"});
  kit::main_button(ui, {.id = "main", .label = "Work on the first one", .icon = kit::Icon::play});
  kit::end_screen(ui, {.main = {.id = "mend", .label = "Work on the first one"},
                       .quiet = {.id = "again", .label = "Start over"}});
}

void draw_dialog(Ui& ui) {
  draw_result(ui);
  if (g_kept.dialog && kit::begin_dialog(ui, {.id = "leave", .title = "Leave the check?"}))
    g_kept.dialog = false;
  if (!g_kept.dialog) return;
  kit::paragraph(ui, "leave-text", "Your answers are not kept.");
  kit::main_button(ui, {.id = "stay", .label = "Stay here"});
  kit::quiet_button(ui, {.id = "leave-now", .label = "Leave"});
  kit::end_dialog(ui);
}

void draw_icons(Ui& ui) {
  kit::begin_screen(ui, {.id = "icons", .title = "Icons"});
  kit::heading(ui, "title", "Marks");
  kit::paragraph(ui, "p", "Wait.");
  const float x = 24, y = 480;
  for (int n = 1; n <= static_cast<int>(kit::Icon::caution); ++n) {
    const int row = (n - 1) / 8;
    const int column = (n - 1) % 8;
    const Rect at{x + 34 * static_cast<float>(column), y + 36 * static_cast<float>(row), 26, 26};
    kit::draw_icon(ui.draw_list(), static_cast<kit::Icon>(n), at, ui.palette().ink);
  }
  kit::skeleton(ui, "s", "Your questions are on their way.");
  kit::end_screen(ui);
}

void draw_dots(Ui& ui) {
  const std::array<int, kit::k_dot_places> yours{10, 80, 1, 8, 1}, good{10, 65, 4, 19, 2};
  kit::begin_screen(ui, {.id = "dots", .title = "Where it goes", .back = true});
  kit::picture(
      ui, {.id = "picture",
           .alternative = "Two bodies with 100 dots each.",
           .draw =
               [=](Ui& to, Rect at) {
                 kit::draw_bodies(
                     to, at, {{{"This puff", yours}, {"A good puff", good}}, "Teaching estimate."});
               },
           .aspect = 1.45F});
  kit::heading(ui, "title", "Where it goes");
  kit::dots_table(ui, {.id = "table",
                       .name = "Dots in each place, of 100",
                       .heads = {"Where", "This puff", "A good puff"},
                       .places = {"Stays in the inhaler", "Mouth and throat", "Airways",
                                  "Deep in the lungs", "Out to the air"},
                       .columns = {yours, good}});
  g_kept.days = kit::stepper(ui,
                             {.id = "press",
                              .name = "When you press",
                              .unit = "seconds before you breathe in",
                              .shown = "1.5"},
                             g_kept.days);
  kit::end_screen(ui, {.main = {.id = "go", .label = "Done"}, .note = "Teaching estimate."});
}

void draw_look(Ui& ui) { draw_several(ui); }

struct Page {
  const char* name;
  void (*draw)(Ui&);
};
constexpr Page k_pages[] = {
    {"question", draw_question}, {"several", draw_several}, {"revealed", draw_revealed},
    {"pictures", draw_pictures}, {"order", draw_order},     {"numbers", draw_numbers},
    {"timing", draw_timing},     {"running", draw_timing},  {"timed", draw_timing},
    {"choose", draw_choose},     {"result", draw_result},   {"dialog", draw_dialog},
    {"look", draw_look},         {"icons", draw_icons},     {"scrolled", draw_result},
    {"picked", draw_order},      {"dots", draw_dots},       {"pads", draw_pads},
    {"spans", draw_spans}};

}  // namespace

int page_count() { return static_cast<int>(std::size(k_pages)); }
std::string page_name(int page) { return k_pages[page].name; }
void forget() { g_kept = Kept(); }
void draw_page(Ui& ui, int page) { k_pages[page].draw(ui); }

void after_start(int page) {
  namespace null = shell::null;
  const std::string name = page_name(page);
  if (name == "look") null::press("look-button");
  if (name == "several") null::press("go");
  if (name == "picked") null::press("cards/out/pick");
  if (name == "scrolled") null::wheel(-2);
  if (name == "running" || name == "timed") {
    null::press("pad");
    null::settle();
    null::set_now(1000 + 7400);
    null::frame();
  }
  if (name == "timed") null::press("pad");
}

}  // namespace rehale::gallery
