// Which logs of a run-through are taken, how slips are joined, what is offered, what evidence comes
// of it. Expected values are worked out by hand from the contracts in core/rehearsal.
#include "core/rehearsal/take.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/exchange/run_json.h"
#include "core/exchange/take_json.h"
#include "core/rehearsal/account.h"
#include "core/rehearsal/evidence.h"
#include "core/rehearsal/offer.h"
#include "tests/support/courses.h"
#include "tests/support/fixture.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using rehearsal::Act;
using rehearsal::Take;

const catalog::Family& spray() { return support::shipped_family("spray"); }

Take take(std::vector<Act> acts) { return {"spray", "c", false, 1, std::move(acts)}; }

std::string trouble(const Take& with) {
  const auto checked = rehearsal::check_take(spray(), with);
  return checked ? "" : checked.error().code + " " + checked.error().where;
}

TEST(Take, may_press_while_a_breath_goes_on) {
  EXPECT_EQ(trouble(take({{"start-breath", 0, 4000}, {"press", 500, 500}})), "");
}

TEST(Take, with_two_of_one_part_at_once_is_refused) {
  EXPECT_EQ(trouble(take({{"shake", 0, 4000}, {"press", 500, 500}})), "acts-overlap act 1");
  EXPECT_EQ(
      trouble(take({{"start-breath", 0, 4000}, {"press", 9, 9}, {"hold-breath", 3999, 9000}})),
      "acts-overlap act 2");
}

TEST(Take, with_odd_times_is_refused) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(trouble(take({{"press", -1, 0}})), "act-time act 0");
  EXPECT_EQ(trouble(take({{"shake", 5, 4}})), "act-time act 0");
  EXPECT_EQ(trouble(take({{"shake", none, 4}})), "act-time act 0");
  EXPECT_EQ(trouble(take({{"shake", 0, std::numeric_limits<double>::infinity()}})),
            "act-time act 0");
  EXPECT_EQ(trouble(take({{"press", 3'600'001, 3'600'001}})), "act-time act 0");
  EXPECT_EQ(trouble(take({{"shake", 0, 600'001}})), "act-too-long act 0");
  EXPECT_EQ(trouble(take({{"open", 50, 50}, {"breathe-out", 49, 60}})), "acts-out-of-order act 1");
}

TEST(Take, of_unknown_steps_or_another_family_is_refused) {
  EXPECT_EQ(trouble(take({{"open", 0, 0}, {"slide", 5, 5}})), "unknown-step act 1");
  EXPECT_EQ(trouble({"soft-mist", "c", false, 1, {}}), "take-mismatch take");
  EXPECT_EQ(trouble({"spray", "c", false, 3, {}}), "take-mismatch take");
}

TEST(Take, of_too_many_acts_is_refused) {
  EXPECT_EQ(trouble(take(std::vector<Act>(201, Act{"open", 0, 0}))), "too-many-acts take");
  EXPECT_EQ(trouble(take(std::vector<Act>(200, Act{"open", 0, 0}))), "");
}

TEST(Take, of_a_family_without_a_run_through_is_told_so) {
  const auto pipe = support::ok_family();
  const auto account = rehearsal::account_of(pipe, {pipe.id, "c", false, 1, {}});
  ASSERT_FALSE(account.has_value());
  EXPECT_EQ(account.error().code, "no-run-through");
}

TEST(Slips, of_half_a_second_and_less_are_joined) {
  const auto joined = rehearsal::without_slips(
      spray(),
      {{"hold-breath", 0, 3000}, {"hold-breath", 3500, 6000}, {"hold-breath", 6501, 9000}});
  EXPECT_EQ(joined, (std::vector<Act>{{"hold-breath", 0, 6000}, {"hold-breath", 6501, 9000}}));
}

TEST(Slips, are_joined_across_what_the_other_part_does) {
  const auto joined = rehearsal::without_slips(
      spray(), {{"start-breath", 0, 900}, {"press", 1000, 1000}, {"start-breath", 1200, 4000}});
  EXPECT_EQ(joined, (std::vector<Act>{{"start-breath", 0, 4000}, {"press", 1000, 1000}}));
}

TEST(Slips, are_not_joined_across_something_else_of_the_part) {
  const std::vector<Act> acts{{"shake", 0, 900}, {"look", 1000, 1000}, {"shake", 1200, 4000}};
  EXPECT_EQ(rehearsal::without_slips(spray(), acts), acts);
}

TEST(Slips, are_not_seen_in_a_wait_that_was_passed_over) {
  const std::vector<Act> acts{{"wait", 0, 900}, {"wait", 1000, 1000, true}};
  EXPECT_EQ(rehearsal::without_slips(spray(), acts), acts);
}

TEST(Aims, are_the_middle_of_the_target) {
  EXPECT_EQ(rehearsal::aim_s(spray(), "start-breath"), 4);  // NHLBI: 3 to 5 s
  EXPECT_EQ(rehearsal::aim_s(spray(), "hold-breath"), 10);
  EXPECT_EQ(rehearsal::aim_s(spray(), "breathe-out"), std::nullopt);
  EXPECT_EQ(rehearsal::aim_s(support::shipped_family("powder-cover"), "breathe-in-fast"), 3);
}

// Always doing what the guide says comes to a whole, faultless dose in every family.
TEST(Offer, followed_to_the_end_is_a_dose_done_well) {
  for (const auto& id : support::shipped_families()) {
    const auto& family = support::shipped_family(id);
    for (int doses = 1; doses <= (family.run_through.twice.empty() ? 1 : 2); ++doses) {
      SCOPED_TRACE(id);
      Take take{id, "c", false, doses, {}};
      double now = 0;
      for (auto next = rehearsal::offer_after(family, take).next; !next.empty();
           next = rehearsal::offer_after(family, take).next) {
        ASSERT_LT(take.acts.size(), 30U);
        const bool press = next == "press";
        const double at = press ? take.acts.back().start_ms + 500 : now + 600;
        const double length = press ? 0 : rehearsal::aim_s(family, next).value_or(0) * 1000;
        take.acts.push_back({next, at, at + length});
        now = std::max(now, at + length);
      }
      const auto account = rehearsal::account_of(family, take);
      ASSERT_TRUE(account.has_value()) << account.error().code << account.error().where;
      EXPECT_EQ(account->report.state.doses.inhaled, doses);
      for (const auto& finding : account->findings) EXPECT_TRUE(finding.met) << finding.technique;
      for (const auto& shown : account->shown) EXPECT_TRUE(shown.met);
    }
  }
}

TEST(Offer, tempts_with_what_is_not_wanted_now) {
  for (const auto& id : support::shipped_families()) {
    const auto& family = support::shipped_family(id);
    Take take{id, "c", false, 1, {}};
    std::size_t tempting = 0;
    for (const auto& step : family.run_through.once) {
      const auto offer = rehearsal::offer_after(family, take);
      if (offer.pads.size() > 2) ++tempting;
      EXPECT_NE(std::ranges::find(offer.pads, step), offer.pads.end()) << id << ' ' << step;
      const double at = static_cast<double>(take.acts.size()) * 1000;
      take.acts.push_back({step, at, at});
    }
    EXPECT_GE(tempting, family.run_through.once.size() / 2) << id;
  }
}

TEST(Evidence, of_a_guided_take_is_none) {
  auto guided = take({{"open", 0, 0}, {"look", 1000, 1000}});
  const auto& model = support::shipped_course("spray")->bank.model;
  const auto account = rehearsal::account_of(spray(), guided);
  EXPECT_EQ(rehearsal::evidence_of(model, spray(), guided, *account)->size(), 1U);
  guided.guided = true;
  EXPECT_TRUE(rehearsal::evidence_of(model, spray(), guided, *account)->empty());
}

TEST(Evidence, does_not_depend_on_how_it_went) {
  const auto& model = support::shipped_course("spray")->bank.model;
  const auto piece_of_breath = [&](double length) {
    const auto one = take({{"start-breath", 0, length}});
    const auto all =
        rehearsal::evidence_of(model, spray(), one, *rehearsal::account_of(spray(), one));
    for (const auto& e : *all) {
      if (spray().techniques[static_cast<std::size_t>(e.technique)].id == "slow-deep")
        return std::pair(e.piece.rows, e.column);
    }
    return std::pair(std::vector<double>{}, -1);
  };
  EXPECT_EQ(piece_of_breath(4000).first, piece_of_breath(900).first);
  EXPECT_EQ(piece_of_breath(4000).second, mastery::k_met);
  EXPECT_EQ(piece_of_breath(900).second, mastery::k_missed);
}

TEST(TakeText, stands_beside_the_events_and_older_readers_pass_over_it) {
  const auto one = take({{"open", 0, 0}, {"wait", 10.5, 10.5, true}});
  const std::string text = exchange::write_log_with({}, {one});
  EXPECT_TRUE(exchange::read_log(text).has_value());
  EXPECT_EQ(exchange::write_log_with({}, {}), exchange::write_log({}));
  EXPECT_TRUE(exchange::read_takes(exchange::write_log({}))->empty());
}

TEST(TakeText, that_is_cut_or_bent_is_refused_with_its_place) {
  const std::string text = exchange::write_log_with({}, {take({{"open", 0, 0}})});
  const auto bent = [&](const std::string& from, const std::string& to) {
    std::string other = text;
    other.replace(other.find(from), from.size(), to);
    const auto read = exchange::read_takes(other);
    return read ? "" : read.error().code + ' ' + read.error().where;
  };
  EXPECT_EQ(bent("\"doses\":1", "\"doses\":7"), "log-shape /rehearsals/0/doses");
  EXPECT_EQ(bent("\"start_ms\"", "\"begin_ms\""), "log-shape /rehearsals/0/acts/0");
  EXPECT_EQ(bent("\"step\":\"open\"", "\"step\":7"), "log-shape /rehearsals/0/acts/0");
  EXPECT_EQ(bent("\"acts\":[", "\"acts\":7,\"x\":["), "log-shape /rehearsals/0");
  EXPECT_EQ(exchange::read_takes(text.substr(0, text.size() / 2)).error().code, "log-not-json");
}

}  // namespace
