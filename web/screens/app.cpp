#include "web/screens/app.h"

#include <algorithm>

#include "core/exchange/take_json.h"
#include "web/screens/asked.h"
#include "web/screens/screens.h"
#include "web/shell/host.h"

namespace rehale::screens {

namespace {

const std::string k_none;

struct Screen {
  Where where;
  void (*draw)(App&);
};

// In the order of Where.
constexpr Screen k_screens[] = {
    {Where::loading, draw_loading},
    {Where::choose, draw_choose},
    {Where::finder, draw_finder},
    {Where::ready, draw_ready},
    {Where::question, draw_question},
    {Where::result, draw_result},
    {Where::mend, draw_mend},
    {Where::practice, draw_practice},
    {Where::run_through, draw_run_through},
    {Where::about, draw_about},
    {Where::where_it_goes, draw_where_it_goes},
    {Where::hand_over, draw_hand_over},
    {Where::desk, draw_desk},
    {Where::desk_read, draw_desk_read},
    {Where::desk_people, draw_desk_people},
    {Where::desk_person, draw_desk_person},
    {Where::desk_group, draw_desk_group},
    {Where::asked, draw_asked},
    {Where::set_practice, draw_set_practice},
    {Where::set_link, draw_set_link},
    {Where::care, draw_care},
    {Where::care_plan, draw_care_plan},
    {Where::again, draw_again},
    {Where::kiosk, draw_kiosk},
    {Where::kiosk_result, draw_kiosk_result},
    {Where::kiosk_staff, draw_kiosk_staff},
    {Where::kiosk_clean, draw_kiosk_clean},
    {Where::trouble, draw_trouble},
};

constexpr bool all_in_order() {
  std::size_t n = 0;
  for (const Screen& screen : k_screens) {
    if (static_cast<std::size_t>(screen.where) != n++) return false;
  }
  return n == static_cast<std::size_t>(Where::trouble) + 1;
}
static_assert(all_in_order());

}  // namespace

void App::start() {
  take_kept_settings();
  content.load_start(first_language(), [this](const Troubles& troubles) {
    if (!troubles.empty()) return show_trouble("trouble/content", troubles);
    show_words();
    open_first_screen();
    shell::redraw();
  });
}

std::uint64_t App::seed() {
  const auto wished = seed_in_address();
  return wished ? *wished : shell::random_seed();
}

void App::show_words() {
  ui->set_words(kit_words(*this));
  std::vector<kit::Language> all;
  for (const catalog::Id& id : content.library().languages)
    all.push_back({id, say("languages/" + id)});
  ui->set_languages(std::move(all), content.language());
}

void App::show_trouble(const std::string& title, Troubles findings) {
  trouble = {title, "", std::move(findings), false};
  where = Where::trouble;
  shell::redraw();
}

void App::show_error(const Error& error) {
  show_trouble("trouble/run", {{"", error.where, error.code, error.detail}});
}

void App::pick_family(const catalog::Id& family, std::function<void()> then) {
  picked_ = family;
  where = Where::loading;
  content.load_family(family, [this, then = std::move(then)](const Troubles& troubles) {
    if (!troubles.empty()) {
      show_trouble("trouble/content", troubles);
      trouble.can_go_on = true;
      return;
    }
    if (!can_be_asked()) return;
    where = Where::ready;
    if (then) then();
    shell::redraw();
  });
  content.fetch_scenes();
}

void App::begin_run() {
  const FamilyContent* family = content.family(picked_);
  handed.reset();
  history.state = History::State::unasked;  // another tab may have deleted it
  Session::Wish wish{.language = content.language(), .seed = seed()};
  if (assigned) {
    wish.questions = assigned->questions;
    wish.focus = check::focus_of(family->course->family, assigned->focus);
  }
  const auto begun = session.begin(family->course, wish, shell::now_ms());
  if (!begun) return show_error(begun.error());
  next_question();
}

void App::next_question() {
  if (!session.show_next(shell::now_ms())) return finish_run();
  where = Where::question;
  fresh_draft(session.open_question());
}

void App::finish_run() {
  where = Where::result;
  hand_over.day = shell::today();
  if (kiosk.on) return count_in_kiosk();
  look_at_kept([this] { keep_result(); });
}

void App::fresh_draft(int index) {
  const catalog::Question& asked = question(index);
  draft = {};
  draft.question = index;
  draft.ticked.assign(asked.options.size(), false);
  draft.number = asked.range.start;
  if (asked.kind == catalog::Kind::order) {
    for (const int card : session.run().shown_order(index)) {
      draft.order.push_back(asked.actions[static_cast<std::size_t>(card)]);
    }
  }
}

void App::give(const check::Answer& answer) {
  const auto given = session.answer(answer, shell::now_ms());
  if (!given) return show_error(given.error());
  next_question();
}

void App::begin_practice() {
  const auto& items = session.advice().to_mend;
  const int technique = items[static_cast<std::size_t>(mending)].technique;
  revealed.reset();
  if (!session.show_practice(technique, shell::now_ms())) {
    where = Where::mend;
    return;
  }
  where = Where::practice;
  fresh_draft(session.open_question());
}

void App::give_practice(const check::Answer& answer) {
  auto marking = session.answer_practice(answer, shell::now_ms());
  if (!marking) return show_error(marking.error());
  revealed = *std::move(marking);
}

void App::to_choose() {
  session.clear();
  takes.clear();
  handed.reset();
  asks_to_leave = false;
  finder_path.clear();
  found.reset();
  mending = 0;
  where = assigned ? Where::asked : Where::choose;
}

const catalog::Family& App::rehearsed_family() const {
  return content.family(picked_)->course->family;
}

void App::to_run_through() {
  before_run_through = where;
  rehearsal.again();
  where = Where::run_through;
}

void App::start_run_through() {
  rehearsal_held = false;
  rehearsal_let_go_ms = -1;
  const auto& course = *content.family(picked_)->course;
  rehearsal.start(course.family, course.content, ui->now_ms());
}

void App::finish_run_through() {
  rehearsal.finish(ui->now_ms());
  if (takes.size() >= exchange::k_max_takes) takes.erase(takes.begin());
  takes.push_back(rehearsal.take());
}

void App::leave_run_through() { where = before_run_through; }

void App::to_about() {
  before_about = where;
  where = Where::about;
}

const std::string& App::say(const std::string& path) const {
  const std::string* found_text = content.texts().find(path);
  return found_text == nullptr ? k_none : *found_text;
}

const std::string& App::tell(const std::string& path) const { return tell_of(picked_, path); }

const std::string& App::tell_of(const catalog::Id& family, const std::string& path) const {
  const FamilyContent* here = content.family(family);
  const std::string* found_text = here == nullptr ? nullptr : here->texts.find(path);
  return found_text == nullptr ? k_none : *found_text;
}

const catalog::Question& App::question(int index) const {
  return session.family().questions[static_cast<std::size_t>(index)];
}

std::string App::export_run() const {
  if (!session.running() && takes.empty()) return {};
  const auto log = session.running() ? session.run().log() : check::Log{};
  const std::string text = exchange::write_log_with(log, takes);
  return care.known ? exchange::with_care(text, care_code()) : text;
}

bool App::waits_unseen() const {
  return !seen_ && where == Where::loading && !shell::launch_option("family").empty();
}

void App::frame() {
  seen_ = true;
  follow_settings();
  if (kiosk.on) watch_kiosk();
  k_screens[static_cast<std::size_t>(where)].draw(*this);
  if (kiosk.on) ask_who_is_there();
}

}  // namespace rehale::screens
