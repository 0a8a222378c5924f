// The order rules of the facts sheet (facts/technique.md 9b) in the shipped content: each is kept,
// what the sheet leaves free is free, and the virtual device tells each misstep. The orders are the
// sheet's, the ids the content's.
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "core/catalog/lookup.h"
#include "core/procedure/device.h"
#include "core/procedure/order.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using catalog::Id;
using support::shipped_family;

using Ids = std::vector<Id>;

// ---- 9b: order rules ---------------------------------------------------------------------------

struct Before {
  const char* family;
  const char* before;
  const char* after;
};

// "All" rows of 9b are written out for each family with the family's own breath.
const Before k_rules[] = {
    // F1: cap off < inhale; out-breath < inhale; seal < inhale; full breath < hold; last dose <
    // rinse; dose 1 complete < dose 2; shake < press; start of breath < press < end of breath
    {"spray", "open", "start-breath"},
    {"spray", "breathe-out", "start-breath"},
    {"spray", "seal-lips", "start-breath"},
    {"spray", "finish-breath", "hold-breath"},
    {"spray", "press", "rinse"},
    {"spray", "second-puff", "rinse"},
    {"spray", "hold-breath", "second-puff"},
    {"spray", "shake", "press"},
    {"spray", "start-breath", "press"},
    {"spray", "press", "finish-breath"},
    // F4: the same, and open < lever < inhale
    {"powder-lever", "open", "breathe-in-fast"},
    {"powder-lever", "breathe-out", "breathe-in-fast"},
    {"powder-lever", "seal-lips", "breathe-in-fast"},
    {"powder-lever", "breathe-in-fast", "hold-breath"},
    {"powder-lever", "breathe-in-fast", "rinse"},
    {"powder-lever", "open", "slide"},
    {"powder-lever", "slide", "breathe-in-fast"},
    // F5: the same, and open to click < inhale < close
    {"powder-cover", "open", "breathe-in-fast"},
    {"powder-cover", "breathe-out", "breathe-in-fast"},
    {"powder-cover", "seal-lips", "breathe-in-fast"},
    {"powder-cover", "breathe-in-fast", "hold-breath"},
    {"powder-cover", "breathe-in-fast", "rinse"},
    {"powder-cover", "breathe-in-fast", "close"},
    // F8: the same, and upright < turn half < open < start breath < press < end of breath; prime <
    // dose
    {"soft-mist", "open", "start-breath"},
    {"soft-mist", "breathe-out", "start-breath"},
    {"soft-mist", "seal-lips", "start-breath"},
    {"soft-mist", "finish-breath", "hold-breath"},
    {"soft-mist", "press", "rinse"},
    {"soft-mist", "second-puff", "rinse"},
    {"soft-mist", "hold-breath", "second-puff"},
    {"soft-mist", "hold-upright", "turn-base"},
    {"soft-mist", "turn-base", "open"},
    {"soft-mist", "start-breath", "press"},
    {"soft-mist", "press", "finish-breath"},
    {"soft-mist", "three-more", "press"},
    {"soft-mist", "prime-once", "press"},
};

// "Free everywhere" (9b), the free lists of F1, F5, F8, and what no row of 9b names (closing while
// the breath is held): no rule may order these, either way.
const Before k_free[] = {
    {"spray", "sit-up", "open"},
    {"spray", "sit-up", "read-counter"},
    {"spray", "read-counter", "open"},
    {"spray", "breathe-out", "shake"},
    {"powder-lever", "sit-up", "open"},
    {"powder-lever", "sit-up", "check-counter"},
    {"powder-lever", "breathe-out", "slide"},
    {"powder-cover", "breathe-out", "open"},
    {"powder-cover", "sit-up", "check-counter"},
    {"soft-mist", "sit-up", "read-counter"},
    {"soft-mist", "breathe-out", "open"},
    {"spray", "hold-breath", "close"},
    {"soft-mist", "hold-breath", "close"},
    {"powder-lever", "hold-breath", "close"},
    {"powder-cover", "hold-breath", "close"},
};

std::optional<bool> is_before(const Before& rule) {
  const auto& family = shipped_family(rule.family);
  std::vector<std::pair<int, int>> pairs;
  for (const auto& r : family.rules) {
    pairs.emplace_back(catalog::index_of(family.actions, r.before),
                       catalog::index_of(family.actions, r.after));
  }
  const auto order =
      procedure::PartialOrder::from_pairs(static_cast<int>(family.actions.size()), pairs);
  const int before = catalog::index_of(family.actions, rule.before);
  const int after = catalog::index_of(family.actions, rule.after);
  if (!order || before < 0 || after < 0) return std::nullopt;
  return order->before(before, after);
}

TEST(Facts, every_order_rule_of_9b_is_kept) {
  for (const auto& rule : k_rules) {
    EXPECT_EQ(is_before(rule), std::optional(true))
        << rule.family << ": " << rule.before << " < " << rule.after;
  }
}

TEST(Facts, what_9b_leaves_free_is_free) {
  for (const auto& rule : k_free) {
    EXPECT_EQ(is_before(rule), std::optional(false))
        << rule.family << ": " << rule.before << " < " << rule.after;
    EXPECT_EQ(is_before({rule.family, rule.after, rule.before}), std::optional(false))
        << rule.family << ": " << rule.after << " < " << rule.before;
  }
}

// ---- 9b: what must hold during a step (run on the virtual device) ------------------------------

struct Misstep {
  const char* what;
  const char* family;
  Ids actions;
  const char* at;         // the action that lapses
  const char* technique;  // whose lapse it is
  int wasted;
};

const Misstep k_missteps[] = {
    {"F1 upright during press",
     "spray",
     {"open", "shake", "tip-over", "breathe-out", "seal-lips", "start-breath", "press"},
     "press",
     "hold-upright",
     0},
    {"F1 shake, gap small",
     "spray",
     {"open", "hold-upright", "shake", "long-pause", "breathe-out", "seal-lips", "start-breath",
      "press"},
     "press",
     "shake-then-spray",
     0},
    {"F1 start of breath before press",
     "spray",
     {"open", "hold-upright", "shake", "breathe-out", "seal-lips", "press", "start-breath"},
     "press",
     "breathe-then-press",
     1},
    {"F1 cap off, or nothing comes out",
     "spray",
     {"hold-upright", "shake", "press"},
     "press",
     "open-and-check",
     0},
    {"F4 one lever per dose",
     "powder-lever",
     {"open", "hold-level", "slide", "slide"},
     "slide",
     "slide-once",
     1},
    {"F4 lever before inhale",
     "powder-lever",
     {"open", "hold-level", "breathe-out", "seal-lips", "breathe-in-fast"},
     "breathe-in-fast",
     "slide-once",
     0},
    {"F4 level from lever until end of breath",
     "powder-lever",
     {"open", "hold-level", "slide", "tilt"},
     "tilt",
     "hold-level",
     1},
    {"F4 out-breath not into the device",
     "powder-lever",
     {"open", "hold-level", "slide", "blow-into"},
     "blow-into",
     "not-into-device",
     1},
    {"F5 no close in between (dose trapped)",
     "powder-cover",
     {"open", "close"},
     "close",
     "no-close-before-breath",
     1},
    {"F5 out-breath not into the device",
     "powder-cover",
     {"open", "blow-into"},
     "blow-into",
     "not-into-device",
     1},
    {"F5 side vents clear",
     "powder-cover",
     {"open", "breathe-out", "cover-vents", "seal-lips", "breathe-in-fast"},
     "breathe-in-fast",
     "seal-lips-vents-clear",
     0},
    {"F8 cap shut to turn",
     "soft-mist",
     {"hold-upright", "open", "turn-base"},
     "turn-base",
     "turn-before-open",
     0},
    {"F8 upright to turn", "soft-mist", {"turn-base"}, "turn-base", "turn-before-open", 0},
    {"F8 turn before press",
     "soft-mist",
     {"hold-upright", "open", "breathe-out", "seal-lips", "start-breath", "press"},
     "press",
     "turn-before-open",
     0},
    {"F8 start of breath before press",
     "soft-mist",
     {"hold-upright", "turn-base", "open", "breathe-out", "seal-lips", "press"},
     "press",
     "breathe-then-press",
     1},
};

TEST(Facts, the_virtual_device_tells_each_misstep_of_9b) {
  for (const auto& misstep : k_missteps) {
    SCOPED_TRACE(misstep.what);
    const auto report = procedure::run(shipped_family(misstep.family), misstep.actions);
    ASSERT_TRUE(report.has_value());
    EXPECT_TRUE(std::any_of(report->lapses.begin(), report->lapses.end(), [&](const auto& lapse) {
      return lapse.action == misstep.at && lapse.technique == misstep.technique;
    }));
    EXPECT_EQ(report->state.doses.wasted, misstep.wasted);
  }
}

}  // namespace
