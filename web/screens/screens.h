// One draw function a screen, one file each. All are called from App::frame only.
#pragma once

#include "core/exchange/calendar.h"
#include "web/screens/app.h"

namespace rehale::screens {

void draw_loading(App& app);
void draw_choose(App& app);
void draw_finder(App& app);
void draw_ready(App& app);
void draw_question(App& app);
void draw_result(App& app);
void draw_mend(App& app);
void draw_practice(App& app);
void draw_where_it_goes(App& app);
void draw_run_through(App& app);
void draw_hand_over(App& app);
void draw_handed(App& app);       // in the result: that it came with a link, and from when
void draw_desk(App& app);         // the educator's way in
void draw_desk_read(App& app);    // codes and files, read with progress
void draw_sealed(App& app);       // in it: the way to open seals with a key
void stop_opening(App& app);      // the key is forgotten
void draw_desk_people(App& app);  // results one by one
void draw_desk_person(App& app);
void draw_desk_group(App& app);
void draw_asked(App& app);
void draw_set_practice(App& app);
void draw_set_link(App& app);
void draw_care(App& app);
void draw_care_plan(App& app);
void draw_again(App& app);
void draw_history(App& app);  // in "When to check again"
void draw_about(App& app);
void draw_kiosk(App& app);         // a shared device: where everybody begins
void ask_staff(App& app);          // leads to what staff see, past a code
void draw_kiosk_result(App& app);  // before a result is seen by the whole room
void draw_kiosk_staff(App& app);   // counts of the day, health, setting up
void draw_kiosk_clean(App& app);   // takes no touch for a while
void draw_trouble(App& app);

// The way to the run-through, where the family has one; true: pressed.
[[nodiscard]] bool run_button(App& app);

// What "save as a file" writes: file name, line break, text.
[[nodiscard]] std::string saved_words(const App& app);
// Hands these days to the person's calendar; `told` gets the path of how that went.
void save_calendar(const std::vector<exchange::Reminder>& reminders, std::string& told);

// The kit's own sentences from the interface texts.
[[nodiscard]] kit::Words kit_words(const App& app);

}  // namespace rehale::screens
