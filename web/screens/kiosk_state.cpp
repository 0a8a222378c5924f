// The shared device: who is there, starting again, what is counted. No screen of its own.
#include <algorithm>
#include <cmath>
#include <utility>

#include "web/kit/read_aloud.h"
#include "web/kit/settings_dialog.h"
#include "web/screens/kept_settings.h"
#include "web/screens/kiosk.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

constexpr double k_second_ms = 1000;

bool waits_for_nobody(Where where) {
  return where == Where::kiosk || where == Where::kiosk_clean || where == Where::loading;
}

IdleLimits limits_of(const App& app) {
  IdleLimits limits = app.where == Where::hand_over ? k_idle_handing_over : k_idle;
  if (app.kiosk.reads_aloud) limits.quiet_ms *= 2;
  return limits;
}

// How the page speaks by itself, and its words for what things are (web/js/kiosk_speech.js), in
// that order; "" when nobody asked for it.
std::string speech_of(const App& app) {
  if (!app.kiosk.reads_aloud || !kit::can_read_aloud(*app.ui)) return {};
  std::string lines = kit::reading_wish(*app.ui);
  for (const char* key :
       {"kiosk/say-button", "kiosk/say-switch", "kiosk/say-choice", "kiosk/say-box",
        "kiosk/say-number", "kiosk/say-link", "kiosk/say-on", "kiosk/say-off", "kiosk/say-open",
        "kiosk/say-shut", "kiosk/say-chosen", "kiosk/say-unchosen", "kiosk/say-ticked",
        "kiosk/say-unticked", "kiosk/say-resting", "kiosk/say-place"})
    lines += '\n' + app.say(key);
  return lines;
}

void note_touch(Kiosk& kiosk, double now_ms, bool asked) {
  std::string touched = shell::launch_option(shell::k_option_touched);
  if (touched == kiosk.touched) return;
  kiosk.touched = std::move(touched);
  if (!asked) kiosk.touched_ms = now_ms;  // else the buttons of the question decide
}

}  // namespace

Presence presence(double quiet_for_ms, const IdleLimits& limits) {
  if (quiet_for_ms < limits.quiet_ms) return Presence::here;
  return quiet_for_ms < limits.quiet_ms + limits.warning_ms ? Presence::asked : Presence::gone;
}

int seconds_left(double quiet_for_ms, const IdleLimits& limits) {
  const double left_ms = limits.quiet_ms + limits.warning_ms - quiet_for_ms;
  return std::max(0, static_cast<int>(std::ceil(left_ms / k_second_ms)));
}

double look_again_in_ms(double quiet_for_ms, const IdleLimits& limits) {
  const double left_ms = limits.quiet_ms - quiet_for_ms;
  if (left_ms > 0) return left_ms;
  const double part_ms = std::fmod(-left_ms, k_second_ms);
  return k_second_ms - part_ms;
}

void App::to_kiosk() {
  where = Where::kiosk;
  if (auto counted = exchange::read_tally(shell::launch_option(shell::k_option_counted)))
    kiosk.tally = *std::move(counted);
}

void App::end_kiosk_visit() {
  if (kiosk.ending) return;
  kiosk.ending = true;
  shell::reload();
}

// Counts only, and only here: the answers go with the page.
void App::count_in_kiosk() {
  const auto record = cohort::record_of(session.run(), {});
  exchange::count_check(kiosk.tally, shell::today(), record, session.family());
  shell::ask_page(
      shell::k_ask_keep, "counted\n" + exchange::write_tally(kiosk.tally),
      [](const Result<std::string>&) {});  // full or switched off: counted till the next
  where = Where::kiosk_result;
}

void App::set_up_kiosk() {
  const std::string text = write_settings({ui->look(), content.language()});
  shell::ask_page(shell::k_ask_keep, "kiosk\n" + text, [this](const Result<std::string>& done) {
    kiosk.told = done ? "kiosk/set-up-done" : "care/not-done";
    shell::redraw();
  });
}

// Before the screen draws: nobody there for too long ends the visit.
void App::watch_kiosk() {
  const double now_ms = ui->now_ms();
  note_touch(kiosk, now_ms, is_anybody_asked());
  if (std::string speech = speech_of(*this); speech != kiosk.speech) {
    kiosk.speech = std::move(speech);
    shell::ask_page("kioskSpeech", kiosk.speech, [](const Result<std::string>&) {});
  }
  if (waits_for_nobody(where)) kiosk.touched_ms = now_ms;
  if (!is_anybody_asked()) return;
  asks_to_leave = false;  // one question at a time
  kit::close_settings(*ui);
}

// After the screen: the question whether somebody is there.
void App::ask_who_is_there() {
  if (waits_for_nobody(where)) return;
  const IdleLimits limits = limits_of(*this);
  const double quiet_for_ms = ui->now_ms() - kiosk.touched_ms;
  shell::redraw_at(ui->now_ms() + look_again_in_ms(quiet_for_ms, limits));
  const Presence now = presence(quiet_for_ms, limits);
  if (now == Presence::gone) return end_kiosk_visit();
  if (now == Presence::here) return;
  const bool closed = kit::begin_dialog(*ui, {"idle", say("kiosk/idle-title")});
  const int left = seconds_left(quiet_for_ms, limits);
  kit::paragraph(*ui, "idle-tell",
                 kit::fill(say("kiosk/idle-tell"), {{"seconds", std::to_string(left)}}));
  const bool stay = kit::main_button(*ui, {.id = "idle-stay", .label = say("kiosk/idle-stay")});
  const bool done = kit::quiet_button(*ui, {.id = "idle-done", .label = say("kiosk/done")});
  kit::end_dialog(*ui);
  if (done) return end_kiosk_visit();
  if (stay || closed) kiosk.touched_ms = ui->now_ms();
}

bool App::is_anybody_asked() const {
  return !waits_for_nobody(where) &&
         presence(ui->now_ms() - kiosk.touched_ms, limits_of(*this)) != Presence::here;
}

}  // namespace rehale::screens
