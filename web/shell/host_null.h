// The page without a browser, for native tests: a clock, a person's hands and a captured mirror.
// Give it an App with run(); then frame() or settle().
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/shell/app.h"
#include "web/shell/host.h"

namespace rehale::shell::null {

// Forgets everything, makes a fresh Dear ImGui context, sets the clock to 0.
void reset();

void set_now(double now_ms);
void set_viewport(Viewport viewport);
void set_preferences(const Preferences& preferences);
void set_voice(const Voice& voice);
void set_option(std::string_view name, std::string_view value);
void set_random(double whole);                                // what random_seed gives
void set_file(std::string_view path, std::string_view text);  // answers fetch_text
void set_today(int day);
// What ask_page(name, …) gives; without it "refused".
void set_reply(std::string_view name, std::string_view reply);
void forget_reply(std::string_view name);
std::string asked(std::string_view name);  // the words last given to ask_page(name, …)
bool was_asked(std::string_view name);
void set_file_root(std::string_view folder);  // else read from here (C stdio)
bool load_fonts(std::string_view regular_path, std::string_view bold_path);

// What a person does; seen by the next frames, as in the page.
void pointer_move(float x, float y, Pointer::Kind kind = Pointer::Kind::mouse);
void pointer_down(float x, float y, Pointer::Kind kind = Pointer::Kind::touch);
void pointer_up();
void pointer_cancel();
void tap(float x, float y);  // down, up; clear of the guard against echoes
void wheel(float notches);
void act(MirrorAction action);
void press(std::string_view id);  // act({press, id})

// Draws one frame whether or not anybody asked. The first calls App::start.
void frame();
// Draws while frames are wanted now (deadlines of redraw_at count when the clock has reached them).
// Returns how many were drawn; stops at `most`, which means that something never rests.
int settle(int most = 64);
int frames_wanted();
double next_deadline_ms();  // of redraw_at; infinity: none

// What the page would have got.
const MirrorFrame& mirror();
int publishes();                                           // how often the mirror changed
const MirrorNode* find(Role role, std::string_view name);  // by exact name; null: none
const MirrorNode* find_id(std::string_view id);
std::vector<std::string> take_announcements();
int reloads();
std::string error_title();  // "" while all is well
std::string error_detail();

}  // namespace rehale::shell::null
