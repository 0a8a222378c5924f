// The whole app: what is loaded, where the person is, and which screen draws. Screens get App& and
// change it by the steps below only; each draws one thing and decides nothing about the run.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "web/kit/kit.h"
#include "web/kit/scene_play.h"
#include "web/screens/again.h"
#include "web/screens/care.h"
#include "web/screens/content_store.h"
#include "web/screens/desk_state.h"
#include "web/screens/hand_over.h"
#include "web/screens/history.h"
#include "web/screens/kiosk.h"
#include "web/screens/rehearsal_state.h"
#include "web/screens/session.h"
#include "web/screens/set_practice.h"
#include "web/screens/where_it_goes.h"

namespace rehale::screens {

enum class Where : unsigned char {
  loading,
  choose,
  finder,
  ready,
  question,
  result,
  mend,
  practice,
  run_through,
  about,
  where_it_goes,
  hand_over,
  desk,
  desk_read,
  desk_people,
  desk_person,
  desk_group,
  asked,
  set_practice,
  set_link,
  care,
  care_plan,
  again,
  kiosk,
  kiosk_result,
  kiosk_staff,
  kiosk_clean,
  trouble,
};

// What the person has set on the question in front of them, before it is given.
struct Draft {
  int question = -1;
  int chosen = -1;           // one, picture: place on screen
  std::vector<bool> ticked;  // several: by place on screen
  std::vector<catalog::Id> order;
  double number = 0;
  kit::Timing timing;
};

struct Trouble {
  std::string title;   // path of the interface sentence, or plain words before texts are there
  std::string detail;  // fills {date} in the sentence
  Troubles findings;
  bool can_go_on = false;
  Where back = Where::choose;  // where going on leads; choose: with a clean slate
};

struct App {
  kit::Ui* ui = nullptr;
  ContentStore content;
  Session session;
  Where where = Where::loading;
  Where before_about = Where::choose;
  Draft draft;
  std::optional<check::Marking> revealed;  // practice: what the answer showed
  std::vector<int> finder_path;            // steps of "I don't know which I have"
  std::optional<catalog::FinderStep::Answer> found;
  int mending = 0;  // place in advice().to_mend
  Rehearsal rehearsal;
  std::vector<rehearsal::Take> takes;  // run-throughs done, for exportRun()
  bool rehearsal_held = false;         // a finger holds a pad down
  double rehearsal_let_go_ms = -1;     // since when it does so no more: a slip, or the end
  bool rehearsal_list = false;         // "What you did, in order" is open
  Where before_run_through = Where::ready;
  bool asks_to_leave = false;
  Trouble trouble;
  kit::ScenePlay play;  // of the big picture
  WhereItGoes where_it_goes;
  HandOver hand_over;
  Desk desk;  // of an educator
  Care care;
  Again again;
  History history;
  std::optional<exchange::ResultHead> handed;    // the run on show came with a link
  std::optional<exchange::Assignment> assigned;  // somebody asked for the check, by a link
  SetPractice set_practice;
  Kiosk kiosk;  // a device that many share

  void start();  // once, before the first frame
  void frame();  // draws the one screen
  // A device was picked on the first paint, which stands until its files are here.
  [[nodiscard]] bool waits_unseen() const;

  // Steps.
  void pick_family(const catalog::Id& family, std::function<void()> then = {});
  void begin_run();
  void next_question();
  void give(const check::Answer& answer);
  void begin_practice();
  void give_practice(const check::Answer& answer);
  void to_run_through();
  void start_run_through();
  void finish_run_through();
  void leave_run_through();
  void to_choose();
  void to_about();
  // Shows where this puff (default: a good one) of the picked family goes; nothing happens where
  // there is no model for it. Leads back to the screen it was called from.
  void to_where_it_goes(const std::optional<dose::Technique>& puff = std::nullopt);
  void pick_language(const std::string& language);  // keeps the place

  // Shows the result as code, link, file and paper; nothing happens before a result.
  void to_hand_over();
  // Shows the result of a link's code, or why that cannot be. Nothing else is running.
  void open_handed(const std::string& code);

  // Says who can open the sealed result of a link, or that the link is not whole.
  void open_sealed(const std::string& code);

  // The educator's desk; nothing happens while a check is going on.
  void to_desk();
  // Puts one result of the desk on show, worked out again from its answers; false: it is not whole.
  [[nodiscard]] bool open_desk_person(std::size_t record);
  void leave_desk_person();
  // Every family's content, then `then`; what does not come is told.
  void load_families(const std::function<void()>& then);
  // The practice that a link's code sets, or why it cannot be. Nothing else is running.
  void open_asked(const std::string& code);
  void drop_asked();  // the person wants a check of their own
  // The result on show goes out sealed: the link that asked for it has a key.
  [[nodiscard]] bool seals() const;

  void to_set_practice();
  void make_set_link();  // of what is picked there
  // The counter and care of the inhaler picked; leads back to the screen it was called from.
  void to_care();
  void show_care_plan();
  void open_care_file();
  void open_care_link(const std::string& code);
  [[nodiscard]] std::string care_code() const;  // "": nothing told yet
  // When to check again, and what changed since last time; nothing happens before a result.
  void to_again();
  void agree_to_keep();
  void forget_kept();
  [[nodiscard]] Day result_day() const;
  // web/screens/kiosk_state.cpp
  void to_kiosk();
  void end_kiosk_visit();  // the page begins anew, for somebody else
  void set_up_kiosk();     // as it is set now, it shall be for everybody

  // The interface sentence at this path; all paths are in interface_keys.h.
  [[nodiscard]] const std::string& say(const std::string& path) const;
  // A sentence of the family being checked: "techniques/slow-deep/remedy".
  [[nodiscard]] const std::string& tell(const std::string& path) const;
  [[nodiscard]] const std::string& tell_of(const catalog::Id& family,
                                           const std::string& path) const;
  // The family picked, for the run-through: its content is there.
  [[nodiscard]] const catalog::Family& rehearsed_family() const;
  [[nodiscard]] const catalog::Question& question(int index) const;
  // The event log as JSON; "" before a run.
  [[nodiscard]] std::string export_run() const;

  [[nodiscard]] const catalog::Id& picked() const { return picked_; }

 private:
  // web/screens/app_settings.cpp
  void take_kept_settings();  // before the first words are asked for
  void follow_settings();     // each frame: what the person or their system changed
  void use_language(const std::string& language, bool picked);
  [[nodiscard]] std::string first_language() const;
  void keep_settings();

  void watch_kiosk();
  void ask_who_is_there();
  [[nodiscard]] bool is_anybody_asked() const;
  void count_in_kiosk();

  void open_first_screen();
  bool open_what_was_asked();
  void finish_run();
  void show_handed(const exchange::ReadResult& result);
  void open_care(Where back);
  void look_at_kept(std::function<void()> then);  // at once where it is known
  void write_kept();
  void keep_result();
  void compare_with_kept();
  void work_out_again();
  [[nodiscard]] Result<std::string> result_code() const;
  void show_link_trouble(const char* kind);
  void show_unread(const Error& error);  // of a link's code
  [[nodiscard]] bool can_be_asked();     // else it says why not
  void seal_result(const std::string& code);
  void show_hand_over_code(const std::string& code, const char* kind);
  void fresh_draft(int question);
  void show_words();  // in the language that is loaded now
  void show_trouble(const std::string& title, Troubles findings);
  void show_error(const Error& error);
  [[nodiscard]] std::uint64_t seed();
  catalog::Id picked_;
  bool seen_ = false;            // a frame was drawn
  std::string chosen_language_;  // by the person, here or when they were here before
  std::string system_language_;  // what their system wished when last looked at
  std::string kept_settings_;    // what stands on this device
};

}  // namespace rehale::screens
