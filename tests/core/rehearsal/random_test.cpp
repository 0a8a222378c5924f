// Random run-throughs of the shipped families: whatever people do, the fold agrees with the virtual
// device run on the same order, worked out here by another way, and gives the same bits again.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <string>

#include "core/base/rng.h"
#include "core/catalog/lookup.h"
#include "core/exchange/run_json.h"
#include "core/exchange/take_json.h"
#include "core/rehearsal/account.h"
#include "core/rehearsal/evidence.h"
#include "core/rehearsal/offer.h"
#include "tests/support/courses.h"
#include "tests/support/shipped.h"

namespace {

using namespace rehale;
using catalog::Part;
using rehearsal::Account;
using rehearsal::Act;
using rehearsal::Take;

constexpr int k_takes = 2400;

std::size_t under(Rng& rng, std::size_t n) { return static_cast<std::size_t>(rng.next() % n); }

// Steps at random, mostly in the wanted order, hands and breath each one at a time.
Take random_take(const catalog::Family& family, Rng& rng) {
  Take take;
  take.family = family.id;
  take.doses = 1 + static_cast<int>(under(rng, 2));
  const auto& wanted = rehearsal::wanted_steps(family, take.doses);
  double now = 0, free[2] = {0, 0};
  const std::size_t many = under(rng, 24);
  for (std::size_t n = 0; n < many; ++n) {
    const auto& steps = family.run_through.steps;
    const auto& id = under(rng, 3) == 0 ? steps[under(rng, steps.size())].id
                                        : wanted[std::min(n, wanted.size() - 1)];
    const auto* step = catalog::find(steps, id);
    double& busy_until = free[static_cast<std::size_t>(step->part)];
    now = std::max(now, busy_until) + 250.0 * static_cast<double>(under(rng, 8));
    const double length = step->timed ? 100.0 * static_cast<double>(under(rng, 120)) : 0;
    take.acts.push_back({id, now, now + length, step->timed && under(rng, 20) == 0});
    busy_until = now + length;
    now +=
        under(rng, 4) == 0 ? length : std::min(length, 100.0 * static_cast<double>(under(rng, 9)));
  }
  return take;
}

void for_all(void (*check)(const catalog::Family&, const Take&), int takes = k_takes) {
  Rng rng(20261125);
  for (int n = 0; n < takes; ++n) {
    const auto& families = support::shipped_families();
    const auto& family =
        support::shipped_family(families[static_cast<std::size_t>(n) % families.size()]);
    const Take take = random_take(family, rng);
    ASSERT_TRUE(rehearsal::check_take(family, take).has_value()) << n;
    SCOPED_TRACE(family.id + " take " + std::to_string(n));
    check(family, take);
    if (testing::Test::HasFailure()) return;
  }
}

// The order by walking the clock in ms: ends of breaths, then starts of breaths, then hands.
std::vector<catalog::Id> order_by_clock(const catalog::Family& family, const Account& account) {
  std::vector<catalog::Id> order;
  std::vector<double> times;
  for (const auto& one : account.done) times.push_back(one.at_ms);
  std::ranges::sort(times);
  times.erase(std::unique(times.begin(), times.end()), times.end());
  for (const double now : times) {
    for (int pass = 0; pass < 3; ++pass) {
      for (const auto& one : account.done) {
        const Act& act = account.acts[static_cast<std::size_t>(one.act)];
        const auto* step = catalog::find(family.run_through.steps, act.step);
        const bool start = one.action == step->id;
        const bool no_length = act.end_ms <= act.start_ms;
        const int mine = step->part == Part::hands ? 2 : start || no_length ? 1 : 0;
        if (one.at_ms == now && mine == pass) order.push_back(one.action);
      }
    }
  }
  return order;
}

TEST(RandomTakes, agree_with_the_device_on_the_same_order) {
  for_all([](const catalog::Family& family, const Take& take) {
    const auto account = rehearsal::account_of(family, take);
    ASSERT_TRUE(account.has_value());
    const auto report = procedure::run(family, order_by_clock(family, *account));
    ASSERT_TRUE(report.has_value());
    EXPECT_EQ(account->report.state, report->state);
    ASSERT_EQ(account->report.lapses.size(), report->lapses.size());
    for (std::size_t n = 0; n < report->lapses.size(); ++n) {
      EXPECT_EQ(account->report.lapses[n].rule, report->lapses[n].rule);
      EXPECT_EQ(account->report.lapses[n].technique, report->lapses[n].technique);
      EXPECT_EQ(account->report.lapses[n].index, report->lapses[n].index);
    }
    // Every technique that lapsed on the device is shown as missed, and no dose is lost from sight.
    for (const auto& lapse : report->lapses) {
      if (lapse.technique.empty()) continue;
      const int index = catalog::index_of(family.techniques, lapse.technique);
      const auto shown = std::ranges::find(account->shown, index, &rehearsal::Shown::technique);
      ASSERT_NE(shown, account->shown.end());
      EXPECT_FALSE(shown->met);
    }
    const auto& doses = account->report.state.doses;
    EXPECT_EQ(doses.left + doses.ready + doses.inhaled + doses.wasted, family.doses_at_start);
  });
}

// What each act comes to: its step's action once, and its end where it has one.
TEST(RandomTakes, come_to_each_act_once) {
  for_all([](const catalog::Family& family, const Take& take) {
    const auto account = rehearsal::account_of(family, take);
    ASSERT_TRUE(account.has_value());
    std::size_t expected = 0;
    for (const Act& act : account->acts) {
      const auto* step = catalog::find(family.run_through.steps, act.step);
      expected += step->ends.empty() ? 1U : 2U;
    }
    EXPECT_EQ(account->done.size(), expected);
    EXPECT_LE(account->acts.size(), take.acts.size());
    EXPECT_TRUE(std::ranges::is_sorted(account->done, {}, &rehearsal::Done::at_ms));
  });
}

std::string digest(const Account& account) {
  std::string text;
  for (const auto& finding : account.findings) {
    char line[160];
    std::snprintf(line, sizeof line, "%d %d %s %s %a %a %d;", static_cast<int>(finding.why),
                  finding.met, finding.technique.c_str(), finding.step.c_str(), finding.value,
                  finding.beyond, finding.act);
    text += line;
  }
  return text;
}

TEST(RandomTakes, replay_to_the_bit_from_their_text) {
  for_all([](const catalog::Family& family, const Take& take) {
    const std::string text = exchange::write_log_with({}, {take});
    const auto read = exchange::read_takes(text);
    ASSERT_TRUE(read.has_value()) << read.error().where;
    ASSERT_EQ(read->size(), 1U);
    EXPECT_EQ(read->front(), take);
    EXPECT_EQ(digest(*rehearsal::account_of(family, take)),
              digest(*rehearsal::account_of(family, read->front())));
  });
}

TEST(RandomTakes, give_evidence_that_the_posterior_takes) {
  for_all(
      [](const catalog::Family& family, const Take& take) {
        const auto& model = support::shipped_course(family.id)->bank.model;
        const auto account = rehearsal::account_of(family, take);
        const auto evidence = rehearsal::evidence_of(model, family, take, *account);
        ASSERT_TRUE(evidence.has_value());
        EXPECT_EQ(evidence->size(), account->shown.size());
        for (const auto& one : *evidence) {
          mastery::Posterior posterior(model);
          mastery::SupersetSums before, after;
          before.sum(posterior.states());
          EXPECT_GT(posterior.update(one.piece, one.column), 0);
          after.sum(posterior.states());
          const double was = before.marginal(one.technique), is = after.marginal(one.technique);
          if (one.column == mastery::k_met) EXPECT_GT(is, was);
          else EXPECT_LT(is, was);
        }
      },
      200);
}

TEST(RandomTakes, are_offered_few_known_steps) {
  for_all([](const catalog::Family& family, const Take& take) {
    const auto offer = rehearsal::offer_after(family, take);
    EXPECT_LE(offer.pads.size(), rehearsal::k_most_pads);
    for (const auto& pad : offer.pads)
      EXPECT_GE(catalog::index_of(family.run_through.steps, pad), 0);
    EXPECT_TRUE(offer.next.empty() || catalog::index_of(offer.pads, offer.next) >= 0);
  });
}

}  // namespace
