#include "web/screens/care_words.h"

#include <algorithm>
#include <cmath>

#include "core/catalog/lookup.h"
#include "core/supply/supply.h"
#include "web/screens/dates.h"

namespace rehale::screens {

namespace {

using supply::Limit;
using supply::Need;
using supply::Plan;

constexpr int k_reminded_cleanings = 12;
constexpr int k_least_days = 28;  // below them core/supply says nothing of a year

struct Told {
  const App& app;
  const exchange::CareState& state;
  const catalog::Care& numbers;
  Day today;

  [[nodiscard]] std::string on(Day day) const { return date_words(app.content.texts(), day); }
  [[nodiscard]] const std::string& words(const char* key) const {
    return app.say(std::string("care/") + key);
  }
};

supply::Holding holding_of(const exchange::CareState& state) {
  return {.left = state.left,
          .a_day = a_day(state),
          .opened = state.opened,
          .expiry = state.expiry,
          .leaflet = state.leaflet};
}

int low(const catalog::Criterion* number) {
  return number == nullptr ? 0 : static_cast<int>(number->target_low.value_or(0));
}

// "30 days", "3 months": how long it may be used once open.
std::string window_words(const Told& told) {
  if (told.state.leaflet.in_use_days)
    return counted(told.app, *told.state.leaflet.in_use_days, "days");
  const auto* window = told.numbers.find("in_use");
  return counted(told.app, low(window), window != nullptr ? window->unit : "days");
}

std::string limit_words(const Told& told, const Plan& plan) {
  switch (plan.limit) {
    case Limit::in_use:
      return kit::fill(told.words("limit/in-use"), {{"count", window_words(told)}});
    case Limit::expiry:
      return told.words("limit/expiry");
    case Limit::counter:
      break;
  }
  if (told.state.left == 0) return told.words("limit/empty");
  if (plan.replace_now) return told.words("limit/counter-now");
  return kit::fill(told.words("limit/counter"),
                   {{"count", counted(told.app, a_day(told.state), counts_in(told.numbers))}});
}

CareCard replace_card(const Told& told, const Plan& plan) {
  CareCard card{.id = "replace"};
  if (!plan.replace_by) {
    card.title = told.words("replace-unknown");
    card.lines = {told.words("replace-unknown-why")};
    return card;
  }
  card.caution = plan.replace_now;
  card.title = plan.replace_now
                   ? told.words("replace-now")
                   : kit::fill(told.words("replace-on"), {{"date", told.on(*plan.replace_by)}});
  card.lines.push_back(limit_words(told, plan));
  if (plan.left_over > 0) {
    card.lines.push_back(kit::fill(told.words("left-over"),
                                   {{"count", counted(told.app, plan.left_over, "doses")}}));
  }
  if (plan.limit != Limit::counter && plan.run_out && !plan.replace_now)
    card.lines.push_back(kit::fill(told.words("run-out"), {{"date", told.on(*plan.run_out)}}));
  return card;
}

// As needed: by the counter, where no day comes first.
CareCard refill_by_counter(const Told& told, bool now) {
  const std::string unit = counts_in(told.numbers);
  const auto* few = told.numbers.find("refill_as_needed");
  const int at = few == nullptr ? 0 : static_cast<int>(few->target_high.value_or(0));
  if (now) {
    return {.id = "refill",
            .title = told.words("refill-now"),
            .lines = {kit::fill(told.words("refill-few"),
                                {{"count", counted(told.app, told.state.left, unit)}})}};
  }
  return {.id = "refill",
          .title = kit::fill(told.words("refill-at"), {{"count", counted(told.app, at, unit)}}),
          .lines = {told.words("refill-at-why")}};
}

CareCard refill_card(const Told& told, const Plan& plan) {
  const auto* few = told.numbers.find("refill_as_needed");
  const bool by_counter = a_day(told.state) == 0 && few != nullptr;
  const bool is_low = by_counter && told.state.left <= few->target_high.value_or(0);
  if (!plan.replace_by || is_low) return refill_by_counter(told, is_low);
  CareCard card{.id = "refill"};
  if (plan.refill_now) {
    card.title = told.words("refill-now");
    const int days = *plan.replace_by - told.today;
    if (days > 0) {
      card.lines.push_back(
          kit::fill(told.words("refill-soon"), {{"count", counted(told.app, days, "days")}}));
    }
    return card;
  }
  card.title = kit::fill(told.words("refill-on"), {{"date", told.on(*plan.refill_on)}});
  const int before = *plan.replace_by - *plan.refill_on;
  card.lines = {
      kit::fill(told.words("refill-why"), {{"count", counted(told.app, before, "days")}})};
  return card;
}

// "4 times", as the sprays are done.
std::string times(const Told& told, int count) { return counted(told.app, count, "times"); }

std::vector<std::string> mist_lines(const Told& told, const std::string& why, int sprays) {
  return {why, kit::fill(told.words("prime/mist"), {{"count", times(told, sprays)}}),
          told.words("prime/eyes")};
}

std::vector<std::string> prime_lines(const Told& told) {
  const auto& state = told.state;
  if (!state.is_new && !state.used) return {told.words("prime/unknown")};
  supply::Rest rest{.is_new = state.is_new};
  rest.days_unused = state.used ? std::max(0, told.today - *state.used) : 0;
  const std::string days = counted(told.app, rest.days_unused, "days");
  const std::string idle = kit::fill(told.words("prime/idle-told"), {{"days", days}});
  auto priming = supply::priming(told.numbers, state.leaflet, rest);
  const char* words = state.is_new ? "prime/new" : "prime/idle";
  const bool washed = state.used && state.cleaned && *state.cleaned > *state.used;
  if (priming.need != Need::yes && washed && has_can(told.numbers)) {
    rest.washed = true;
    priming = supply::priming(told.numbers, state.leaflet, rest);
    words = "prime/washed";
  }
  if (priming.need == Need::no) return {told.words("prime/no")};
  if (priming.need == Need::see_leaflet)
    return {kit::fill(told.words("prime/see-leaflet"), {{"days", days}})};
  if (priming.after_mist)
    return mist_lines(told, state.is_new ? told.words("prime/new-told") : idle, priming.sprays);
  return {kit::fill(told.words(words), {{"days", days}, {"count", times(told, priming.sprays)}}),
          told.words("prime/eyes")};
}

CareCard clean_card(const Told& told) {
  const auto days =
      supply::cleaning_days(told.numbers, told.state.leaflet, told.state.cleaned, told.today, 3);
  if (days.size() < 3) {
    return {
        .id = "clean", .title = told.words("clean-dry"), .lines = {told.words("clean-dry-why")}};
  }
  CareCard card{.id = "clean"};
  card.title = days[0] == told.today
                   ? told.words("clean-today")
                   : kit::fill(told.words("clean-on"), {{"date", told.on(days[0])}});
  card.lines = {
      kit::fill(told.words("clean-why"), {{"count", counted(told.app, days[1] - days[0], "days")},
                                          {"second", told.on(days[1])},
                                          {"third", told.on(days[2])}})};
  return card;
}

// Against what the counter showed when the person was last here.
void add_comparison(const Told& told, std::vector<CareCard>& cards) {
  const Care& care = told.app.care;
  if (!care.before || !care.recounted || a_day(*care.before) == 0 || care.before->left < 1) return;
  if (told.state.left > care.before->left) return;  // a new one
  const auto compared = supply::compare_use({.start = care.before->left,
                                             .a_day = a_day(*care.before),
                                             .left = told.state.left,
                                             .opened = care.before->counted},
                                            told.today);
  if (!compared || compared->ask == supply::Ask::nothing) return;
  const std::string expected = std::to_string(compared->expected);
  const bool missed = compared->ask == supply::Ask::doses_missed;
  CareCard card{.id = "compared", .title = {}, .lines = {}, .caution = true};
  card.lines.push_back(
      kit::fill(told.words(missed ? "missed" : "used-more"), {{"expected", expected}}));
  if (missed) card.lines.push_back(told.words("missed-why"));
  cards.push_back(std::move(card));
}

// A reliever used often. Within the first 28 days as if they had been 28: never more than it is.
void add_overuse(const Told& told, std::vector<CareCard>& cards) {
  const auto& state = told.state;
  if (state.doses_a_day != 0) return;
  const auto& before = told.app.care.before;
  const bool since_open = state.opened && state.full;
  if (!since_open && !(before && told.app.care.recounted)) return;
  const int full = state.full.value_or(low(told.numbers.find("doses")));
  const int used = (since_open ? *state.full : before->left) - state.left;
  const int days = told.today - (since_open ? *state.opened : before->counted);
  const auto a_year = supply::relievers_a_year(used, std::max(days, k_least_days), full);
  const auto& library = told.app.content.library();
  if (!a_year || !supply::talk_to_care_team(library, *a_year)) return;
  const auto* flag = catalog::find(library.criteria, "saba_flag");
  const int count = static_cast<int>(std::floor(*a_year));
  cards.push_back(
      {.id = "overuse",
       .title = told.words("overuse"),
       .lines = {kit::fill(told.words("overuse-why"),
                           {{"count", counted(told.app, count, "inhalers")},
                            {"flag", std::to_string(static_cast<int>(*flag->pass_low))}})},
       .caution = true});
}

Told told_of(const App& app, Day today) {
  return {app, app.care.told, *app.content.care(app.picked()), today};
}

}  // namespace

std::vector<CareCard> care_cards(const App& app, Day today) {
  const Told told = told_of(app, today);
  const auto plan = supply::plan(told.numbers, holding_of(told.state), today);
  std::vector<CareCard> cards;
  if (!plan) return cards;
  add_overuse(told, cards);
  add_comparison(told, cards);
  cards.push_back(replace_card(told, *plan));
  cards.push_back(refill_card(told, *plan));
  if (is_sprayed(told.numbers)) {
    cards.push_back(
        {.id = "prime", .title = told.words("prime-title"), .lines = prime_lines(told)});
  }
  cards.push_back(clean_card(told));
  return cards;
}

std::vector<exchange::Reminder> care_reminders(const App& app, Day today) {
  const Told told = told_of(app, today);
  std::vector<exchange::Reminder> reminders;
  const std::string tail = '-' + told.state.family + "@rehale";
  const auto plan = supply::plan(told.numbers, holding_of(told.state), today);
  if (plan && plan->refill_on && plan->replace_by) {
    reminders.push_back(
        {.uid = "refill" + tail,
         .on = *plan->refill_on,
         .title = app.say("again/refill-title"),
         .note = kit::fill(app.say("again/refill-note"), {{"date", told.on(*plan->replace_by)}})});
  }
  const auto days =
      supply::cleaning_days(told.numbers, told.state.leaflet, told.state.cleaned, today, 2);
  if (days.size() == 2) {
    reminders.push_back({.uid = "clean" + tail,
                         .on = days[0],
                         .title = app.say("again/clean-title"),
                         .note = app.say("again/leaflet-note"),
                         .every_days = days[1] - days[0],
                         .times = k_reminded_cleanings});
  }
  return reminders;
}

}  // namespace rehale::screens
