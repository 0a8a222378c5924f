// The numbers of the facts sheet (facts/technique.md, section beside each) in the shipped content:
// the same number, source and status. The numbers are the sheet's, the ids the content's.
#include <gtest/gtest.h>

#include <optional>

#include "core/catalog/lookup.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using catalog::Id;
using support::shipped_family;
using support::shipped_library;

using Ids = std::vector<Id>;
using Bound = std::optional<double>;
constexpr auto k_open = std::nullopt;

// ---- 9: check values ---------------------------------------------------------------------------

struct Value {
  const char* family;  // "" = library.json
  const char* id;
  Bound target_low, target_high, pass_low, pass_high;
  Ids sources;
  const char* status;
};

const Value k_values[] = {
    {"spray", "inh_spray", 3, 5, 3, 6, {"NHLBI"}, "R"},
    {"soft-mist", "inh_spray", 3, 5, 3, 6, {"NHLBI"}, "R"},
    {"spray", "inh_spray_too_fast", 0, 2, 0, 2, {}, "CP"},
    {"spray", "flow_spray", 30, 30, 25, 90, {"Goo94"}, "R"},
    {"spray", "press_spray_share", 0, 20, 0, 20, {"Goo94"}, "R"},
    {"spray", "press_spray", 0, 1, 0, 1, {"Goo94"}, "D"},
    {"soft-mist", "press_spray_share", 0, 20, 0, 20, {"Goo94"}, "R"},
    {"soft-mist", "press_spray", 0, 1, 0, 1, {"Goo94"}, "D"},
    {"", "dpi_start", 0, 0, 0, 0, {"Azo12", "Pri17"}, "R"},
    {"powder-lever", "dpi_start", 0, 0, 0, 0, {"Azo12", "Pri17"}, "R"},
    {"powder-cover", "dpi_start", 0, 0, 0, 0, {"Azo12", "Pri17"}, "R"},
    {"", "dpi_flow", 60, k_open, 30, k_open, {"PIF19", "Cla20"}, "R"},
    {"powder-lever", "dpi_flow", 60, k_open, 30, k_open, {"PIF19", "Cla20"}, "R"},
    {"powder-cover", "dpi_flow", 60, k_open, 30, k_open, {"PIF19", "Cla20"}, "R"},
    {"", "dpi_pressure", 1, k_open, 1, k_open, {"Cla20"}, "R"},
    {"", "hold", 10, 10, 5, k_open, {"NHLBI", "ATS", "Goo94"}, "R"},
    {"spray", "hold", 10, 10, 5, k_open, {"NHLBI", "ATS", "Goo94"}, "R"},
    {"powder-lever", "hold", 10, 10, 5, k_open, {"NHLBI", "ATS", "Goo94"}, "R"},
    {"powder-cover", "hold", 10, 10, 5, k_open, {"NHLBI", "ATS", "Goo94"}, "R"},
    {"soft-mist", "hold", 10, 10, 5, k_open, {"NHLBI", "ATS", "Goo94"}, "R"},
    {"spray", "shake", 5, 5, 5, k_open, {}, "CP"},
    {"spray", "shake_gap", 0, 5, 0, 10, {"Ber18"}, "D"},
    {"", "wait", 30, 30, 15, 60, {"ATS", "NHLBI", "Ber17"}, "R"},
    {"spray", "wait", 30, 30, 15, 60, {"ATS", "NHLBI", "Ber17"}, "R"},
    {"spray", "upright_tol", 0, 0, 0, 45, {"Lst", "Mel11"}, "R"},
    {"powder-lever", "level_tol", 0, 0, 0, 45, {"Lst"}, "R"},
    {"soft-mist", "smi_prime", 3, 3, 3, 3, {"LblS"}, "R"},
    {"soft-mist", "smi_prime_once", 1, 1, 1, 1, {"LblS"}, "R"},
    {"soft-mist", "smi_prime_once_after", 3, 3, 3, 3, {"LblS"}, "R"},
    {"soft-mist", "smi_prime_full_after", 21, 21, 21, 21, {"LblS"}, "R"},
    {"", "mastery", 2, 2, 2, k_open, {}, "CP"},
    {"", "recheck", 4, 4, 4, 4, {"Ovc11", "Azz17"}, "R"},
    {"", "recheck_later", 3, 3, 3, 3, {"Ovc11", "Azz17"}, "R"},
    {"", "misuse", 9, 9, 0, 9, {"Pre16"}, "R"},
    {"", "refill", 7, 7, 0, 7, {}, "CP"},
    {"", "saba_flag", 3, 3, 3, k_open, {"Nwa20"}, "R"},
    {"", "float", 0, 0, 0, 0, {"Cai01"}, "R"},
    // section 1, column "Check value", where the families have numbers of their own
    {"spray", "prime_sprays", 1, 4, 1, 4, {"Lbl"}, "R"},                // F1.2
    {"spray", "volume_spray", 50, k_open, 50, k_open, {"Goo94"}, "R"},  // F1.8
    {"powder-lever", "slides_a_dose", 1, 1, 1, 1, {}, "M"},             // F4.3
    {"powder-lever", "in_use_lever", 0, 30, 0, 42, {"Lbl"}, "R"},   // F4 care: 1 month or 6 weeks
    {"powder-cover", "opens_a_breath", 1, 1, 1, 1, {"Lbl"}, "R"},   // F5.2
    {"powder-cover", "in_use_cover", 0, 42, 0, 42, {"Lbl"}, "R2"},  // F5 care: 6 weeks
    {"soft-mist", "turn", 180, 180, 180, 180, {}, "CP"},            // F8.1
    {"soft-mist", "inh_mist", 5, 5, 3, k_open, {}, "CP"},           // F8.5
    {"soft-mist", "in_use", 3, 3, 0, 3, {"LblS"}, "R"},             // F8 first set-up
};

TEST(Facts, every_check_value_of_section_9_is_there_with_its_source) {
  for (const auto& value : k_values) {
    SCOPED_TRACE(std::string(value.family) + ' ' + value.id);
    const auto& list =
        *value.family == '\0' ? shipped_library().criteria : shipped_family(value.family).criteria;
    const auto* found = catalog::find(list, value.id);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->target_low, value.target_low);
    EXPECT_EQ(found->target_high, value.target_high);
    EXPECT_EQ(found->pass_low, value.pass_low);
    EXPECT_EQ(found->pass_high, value.pass_high);
    EXPECT_EQ(found->from.status, value.status);
    for (const auto& source : value.sources)
      EXPECT_GE(catalog::index_of(found->from.sources, source), 0) << source;
  }
}

// ---- 3a and section 1: how common --------------------------------------------------------------

struct Rate {
  const char* family;
  const char* technique;
  double rate;
  const char* source;
};

const Rate k_rates[] = {
    {"spray", "breathe-then-press", .45, "San16"},  // coordination
    {"spray", "slow-deep", .44, "San16"},           // speed and/or depth
    {"spray", "hold-breath", .46, "San16"},         // no breath-hold
    {"spray", "shake-then-spray", .342, "Cho19"},   // shake
    {"spray", "breathe-out-first", .496, "Per20"},  // out-breath
    {"powder-lever", "slide-once", .073, "Mel11"},  // loads wrongly
    {"powder-lever", "fast-deep", .28, "Mel11"},    // weak or slow
    {"powder-lever", "seal-lips", .05, "Mel11"},    // does not seal
    {"powder-lever", "breathe-out-first", .46, "San16"},
    {"powder-lever", "hold-breath", .37, "San16"},
    {"powder-cover", "ready-then-open", .29, "San16"},  // device preparation
    {"powder-cover", "breathe-out-first", .46, "San16"},
    {"powder-cover", "hold-breath", .37, "San16"},
    {"soft-mist", "breathe-out-first", .478, "Nav20"},
    {"soft-mist", "hold-breath", .306, "Nav20"},
    {"soft-mist", "breathe-then-press", .279, "Nav20"},
    {"soft-mist", "turn-before-open", .226, "Nav20"},
};

TEST(Facts, priors_are_the_published_error_rates) {
  for (const auto& rate : k_rates) {
    SCOPED_TRACE(std::string(rate.family) + ' ' + rate.technique);
    const auto* found = catalog::find(shipped_family(rate.family).techniques, rate.technique);
    ASSERT_NE(found, nullptr);
    EXPECT_NEAR(found->error_rate, rate.rate, 1e-9);
    EXPECT_GE(catalog::index_of(found->from.sources, rate.source), 0);
  }
}

// ---- section 2: carry-over mistakes ------------------------------------------------------------

struct CarryOver {
  const char* family;
  const char* misconception;
  const char* rules_out;
  const char* from;
};

TEST(Facts, rules_carried_over_from_other_families_are_there) {
  for (const CarryOver& rule :
       {CarryOver{"spray", "sucks-hard", "slow-deep", "powder-lever"},
        CarryOver{"soft-mist", "sucks-hard", "slow-deep", "powder-lever"},
        CarryOver{"powder-lever", "breathes-slowly", "fast-deep", "spray"},
        CarryOver{"powder-lever", "shakes-it", "hold-level", "spray"},
        CarryOver{"powder-lever", "opens-without-lever", "slide-once", "powder-cover"},
        CarryOver{"powder-cover", "breathes-slowly", "fast-deep", "spray"},
        CarryOver{"powder-cover", "opens-twice", "no-close-before-breath", "powder-lever"},
        CarryOver{"soft-mist", "turns-with-cap-open", "turn-before-open", ""}}) {
    SCOPED_TRACE(std::string(rule.family) + ' ' + rule.misconception);
    const auto* found =
        catalog::find(shipped_family(rule.family).misconceptions, rule.misconception);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->rules_out, rule.rules_out);
    EXPECT_EQ(found->carried_from, rule.from);
  }
}

// Section 2, row "Speed in".
TEST(Facts, sprays_and_mists_are_slow_and_powders_fast) {
  for (const char* slow : {"spray", "soft-mist"}) EXPECT_EQ(shipped_family(slow).speed, "slow");
  for (const char* fast : {"powder-lever", "powder-cover"})
    EXPECT_EQ(shipped_family(fast).speed, "fast");
}

}  // namespace
