#include "core/supply/supply.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/catalog/lookup.h"

namespace rehale::supply {

namespace {

using catalog::Care;
using catalog::Criterion;

tl::unexpected<Error> input(const char* field, const char* wanted) {
  return fail("supply-input", field, wanted);
}

bool is_day(Day day) { return day >= k_first_day && day <= k_last_day; }

int low(const Criterion* number) {
  return number == nullptr ? 0 : static_cast<int>(number->target_low.value_or(0));
}

Result<void> check(const Holding& holding, Day today) {
  if (holding.left < 0 || holding.left > 1000) return input("left", "0 to 1000 doses");
  if (holding.a_day < 0 || holding.a_day > 40) return input("a_day", "0 to 40 puffs a day");
  if (!is_day(today)) return input("today", "a day from 1970 on");
  if (holding.opened && (!is_day(*holding.opened) || *holding.opened > today)) {
    return input("opened", "today or a day before it");
  }
  if (holding.expiry && !is_day(*holding.expiry)) return input("expiry", "a day from 1970 on");
  const auto days = holding.leaflet.in_use_days;
  if (days && (*days < 1 || *days > 1000)) return input("in_use_days", "1 to 1000 days");
  return {};
}

std::optional<Day> in_use_end(const Care& care, const Holding& holding) {
  if (!holding.opened) return {};
  if (holding.leaflet.in_use_days) return *holding.opened + *holding.leaflet.in_use_days;
  const Criterion* window = care.find("in_use");
  if (window == nullptr) return {};
  if (window->unit == "months") return add_months(*holding.opened, low(window));
  return *holding.opened + low(window);
}

void take_earlier(Plan& plan, const std::optional<Day>& day, Limit limit) {
  if (!day || (plan.replace_by && *plan.replace_by <= *day)) return;
  plan.replace_by = day;
  plan.limit = limit;
}

// When to ask for a new one: by days where these are known, by the counter when used as needed.
void plan_refill(const Care& care, const Holding& holding, Day today, Plan& plan) {
  if (plan.replace_by) {
    plan.refill_on = std::max(today, *plan.replace_by - low(care.find("refill")));
    plan.refill_now = *plan.refill_on == today;
  }
  const Criterion* few = care.find("refill_as_needed");
  if (holding.a_day == 0 && few != nullptr && holding.left <= few->target_high.value_or(0)) {
    plan.refill_on = today;
    plan.refill_now = true;
  }
}

}  // namespace

Result<Plan> plan(const Care& care, const Holding& holding, Day today) {
  const auto checked = check(holding, today);
  if (!checked) return tl::unexpected(checked.error());
  Plan plan;
  if (holding.a_day > 0) {
    plan.days_left = holding.left / holding.a_day;
    plan.run_out = today + *plan.days_left;
  } else if (holding.left == 0) {
    plan.run_out = today;
  }
  take_earlier(plan, plan.run_out, Limit::counter);
  take_earlier(plan, in_use_end(care, holding), Limit::in_use);
  take_earlier(plan, holding.expiry, Limit::expiry);
  plan.replace_now = plan.replace_by && *plan.replace_by <= today;
  plan_refill(care, holding, today, plan);
  if (plan.replace_by) {
    const int days = std::max(0, *plan.replace_by - today);
    // As needed: how many will be used by then is not known.
    plan.left_over = holding.a_day == 0 ? 0 : std::max(0, holding.left - days * holding.a_day);
    if (plan.limit == Limit::counter) plan.left_over = 0;
  }
  return plan;
}

Result<Comparison> compare_use(const Use& use, Day today) {
  if (use.start < 1 || use.start > 1000) return input("start", "1 to 1000 doses");
  if (use.primed < 0 || use.primed > use.start) return input("primed", "0 to what was in it");
  if (use.left < 0 || use.left > use.start) return input("left", "0 to what was in it");
  if (use.a_day < 1 || use.a_day > 40) return input("a_day", "1 to 40 puffs a day");
  if (!is_day(today) || use.opened > today || use.opened < k_first_day) {
    return input("opened", "today or a day before it");
  }
  const std::int64_t due = static_cast<std::int64_t>(use.a_day) * (today - use.opened);
  Comparison comparison;
  comparison.expected = static_cast<int>(std::max<std::int64_t>(0, use.start - use.primed - due));
  const int gap = use.left - comparison.expected;
  const double allowed = std::max<double>(use.a_day, .1 * static_cast<double>(due));
  if (gap > allowed) comparison.ask = Ask::doses_missed;
  if (-gap > allowed) comparison.ask = Ask::used_more;
  return comparison;
}

Priming priming(const Care& care, const Leaflet& leaflet, const Rest& rest) {
  const Criterion* fresh = care.find("prime_new");
  if (fresh == nullptr) return {};  // powder: never
  const Criterion* full = care.find("prime_full_after");
  if (rest.is_new || (full != nullptr && rest.days_unused > low(full))) {
    return {Need::yes, leaflet.prime_new.value_or(low(fresh)), fresh->unit == "sprays-after-mist"};
  }
  const Criterion* after = care.find("prime_idle_after");
  const int sprays = leaflet.prime_idle.value_or(low(care.find("prime_idle")));
  if (after != nullptr) {
    const int surely =
        leaflet.prime_idle_after_days.value_or(static_cast<int>(after->pass_high.value_or(0)));
    const int perhaps =
        leaflet.prime_idle_after_days.value_or(static_cast<int>(after->pass_low.value_or(0)));
    if (rest.days_unused > surely) return {Need::yes, sprays};
    if (rest.days_unused > perhaps && !rest.washed) return {Need::see_leaflet, sprays};
  }
  const Criterion* washed = care.find("prime_after_wash");
  if (rest.washed && washed != nullptr) return {Need::yes, low(washed)};
  return {};
}

std::vector<Day> cleaning_days(const Care& care, const Leaflet& leaflet, std::optional<Day> last,
                               Day from, int count) {
  const Criterion* every = care.find("clean_every");
  const int step = leaflet.clean_every_days.value_or(low(every));
  std::vector<Day> days;
  if (every == nullptr || step < 1 || !is_day(from)) return days;
  Day next = last && is_day(*last) && *last <= from ? *last + step : from;
  next = std::max(next, from);  // overdue: today
  for (int n = 0; n < std::min(count, 60); ++n) days.push_back(next + n * step);
  return days;
}

std::optional<double> relievers_a_year(int used, int days, int full) {
  if (used < 0 || days < 28 || full < 1) return {};
  return static_cast<double>(used) / full * 365.25 / days;
}

bool talk_to_care_team(const catalog::Library& library, double relievers_a_year) {
  const Criterion* flag = catalog::find(library.criteria, "saba_flag");
  return flag != nullptr && flag->pass_low && relievers_a_year >= *flag->pass_low;
}

Result<void> allow(Method method) {
  switch (method) {
    case Method::float_it:
      return fail("float-refused", "Cai01, Flt, Lbl",
                  "cans float in many ways, full or empty, and water can block the valve; read the "
                  "counter, or count each puff");
    case Method::weigh_it:
      return fail(
          "weigh-refused", "Thp",
          "the gas weighs too, so weight does not tell; read the counter, or count each puff");
    case Method::shake_it:
      return fail(
          "shake-refused", "CP",
          "the gas is still heard when no dose is left; read the counter, or count each puff");
    case Method::read_counter:
    case Method::count_doses:
      return {};
  }
  return {};
}

}  // namespace rehale::supply
