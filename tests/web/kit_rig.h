// A page drawn without a browser, for tests of the kit: a person finds things by role and name,
// then acts by finger, mouse or keyboard. Built on web/shell/host_null.h; the clock ticks with the
// frames.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "web/kit/kit.h"
#include "web/shell/host_null.h"

namespace rehale::rig {

using shell::MirrorNode;
using shell::Role;

struct Setting {
  float width = 360, height = 640, scale = 1;
  bool dark = false, reduced_motion = true;
};

// The page's own face, "400Regular" or "700Bold", as ci/setup brought it ($REHALE_FONTS: from
// there).
std::string font_path(const std::string& weight);

// A fresh page that draws this each frame, settled. The draw function may keep state by reference.
void open(const Setting& setting, std::function<void(kit::Ui&)> draw);
kit::Ui& ui();

// Lets time pass: frames of 16 ms while any are wanted; returns how many were drawn.
int settle(int most = 400);
int pass(double ms);  // draws what is due on the way; returns how many frames that were
double now();

const MirrorNode& find(Role role, std::string_view name);  // fails the test when it is not there
const MirrorNode& find_id(std::string_view id);
bool has(std::string_view id);

void tap(float x, float y);  // a finger, slow enough to be meant; settles
void tap(const MirrorNode& node);
void click(const MirrorNode& node);  // a mouse
void press(const MirrorNode& node);  // keyboard or screen reader
void touch_down(float x, float y);
void touch_move(float x, float y);
void touch_up();
std::string said();  // announcements since the last call, joined by '|'

bool is_control(const MirrorNode& node);
bool is_answer(const MirrorNode& node);

}  // namespace rehale::rig
