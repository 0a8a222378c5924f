// What is left in an inhaler and until when it may be used; when to ask for a new one, to prime, to
// clean. Sums of the facts sheet (section 5); the leaflet of the person's own inhaler wins over the
// family's numbers. Must not know clocks (today comes in), texts, screens. Never advises on doses.
#pragma once

#include <optional>
#include <vector>

#include "core/base/civil.h"
#include "core/base/result.h"
#include "core/catalog/care.h"

namespace rehale::supply {

// What the person's own leaflet says; nothing where they did not look.
struct Leaflet {
  std::optional<int> in_use_days, prime_new, prime_idle, prime_idle_after_days, clean_every_days;
  friend bool operator==(const Leaflet&, const Leaflet&) = default;
};

struct Holding {
  int left = 0;   // doses on the counter
  int a_day = 0;  // puffs a dose times doses a day, as prescribed; 0: as needed
  std::optional<Day> opened, expiry;
  Leaflet leaflet;
};

enum class Limit : unsigned char { counter, in_use, expiry };

struct Plan {
  std::optional<int> days_left;   // by the counter alone; not when used as needed
  std::optional<Day> run_out;     // the first day with less than a day's use left
  std::optional<Day> replace_by;  // the earliest limit; from this day on: not used
  Limit limit = Limit::counter;   // which one that is
  std::optional<Day> refill_on;   // ask for a new one; never before today
  bool refill_now = false;
  bool replace_now = false;  // empty, or a limit has come
  int left_over = 0;         // doses that will still be inside then, and not for use
};

// Errors: "supply-input", `where` naming the field: left 0-1000, a_day 0-40, opened not after
// today, days within the calendar.
[[nodiscard]] Result<Plan> plan(const catalog::Care& care, const Holding& holding, Day today);

// Against what the counter would show had it been used as prescribed. `primed`: doses sprayed into
// the air that the counter counted (leaflets differ: never take them off twice).
struct Use {
  int start = 0, primed = 0, a_day = 0, left = 0;
  Day opened = 0;
};
enum class Ask : unsigned char { nothing, doses_missed, used_more };
struct Comparison {
  int expected = 0;  // on the counter
  Ask ask = Ask::nothing;
};
// Asks when the gap is over 10 % of the use so far (common practice) and over one day's use.
// Errors: "supply-input".
[[nodiscard]] Result<Comparison> compare_use(const Use& use, Day today);

enum class Need : unsigned char { no, see_leaflet, yes };
struct Priming {
  Need need = Need::no;
  int sprays = 0;           // one after the other; before a dose is taken
  bool after_mist = false;  // counted from the first mist that is seen
};
struct Rest {
  bool is_new = false, washed = false;
  int days_unused = 0;
};
[[nodiscard]] Priming priming(const catalog::Care& care, const Leaflet& leaflet, const Rest& rest);

// The next `count` (at most 60) cleaning days from `from` on, counted from the last one, which may
// be unknown. None when the family has no cleaning by the calendar.
[[nodiscard]] std::vector<Day> cleaning_days(const catalog::Care& care, const Leaflet& leaflet,
                                             std::optional<Day> last, Day from, int count);

// As many relievers a year call for a talk with the care team (not a diagnosis; Nwa20). `used`
// doses within `days`, of inhalers that hold `full`; needs at least 28 days to say anything.
[[nodiscard]] std::optional<double> relievers_a_year(int used, int days, int full);
[[nodiscard]] bool talk_to_care_team(const catalog::Library& library, double relievers_a_year);

// How somebody wants to find out what is left.
enum class Method : unsigned char { read_counter, count_doses, float_it, weigh_it, shake_it };
// Errors: "float-refused", "weigh-refused", "shake-refused", `where` naming the source.
[[nodiscard]] Result<void> allow(Method method);

}  // namespace rehale::supply
