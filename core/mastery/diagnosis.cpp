#include "core/mastery/diagnosis.h"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <utility>

#include "core/base/rng.h"
#include "core/mastery/coverage.h"

namespace rehale::mastery {

// An item not yet asked.
struct Diagnosis::Candidate {
  int item = 0;
  Bits touches = 0;
  double told = 0;      // nats, by the aim
  double index = 0;     // told, with what keeps a run varied and complete
  double confirms = 0;  // nats about suspected misconceptions it could betray
  bool covers = false;  // asking it is a step towards covering what is unprobed
};

struct Diagnosis::Survey {
  std::vector<Candidate> list;
  std::vector<double> offers;  // [item of the list][technique to probe]: nats about it
  int needed = 0;              // fewest items that probe all techniques wanted that still can be
};

Diagnosis::Diagnosis(const Bank& bank, const Plan& plan, std::uint64_t seed)
    : Diagnosis(bank, plan, seed, Posterior(bank.model)) {}

Diagnosis::Diagnosis(const Bank& bank, const Plan& plan, std::uint64_t seed, Posterior start)
    : bank_(&bank), plan_(plan), seed_(seed), posterior_(std::move(start)) {
  sums_.sum(posterior_.states());
}

Diagnosis::Diagnosis(const Bank& bank, const Plan& plan)
    : bank_(&bank), plan_(plan), seed_(0), finished_(true), posterior_(bank.model) {}

Diagnosis Diagnosis::of_finished(const Bank& bank, const Plan& plan) { return {bank, plan}; }

Bits Diagnosis::to_probe() const { return bank_->model.critical | plan_.must; }

Bits Diagnosis::unprobed(Bits among) const {
  Bits found = 0;
  for (int k = 0; k < bank_->model.techniques; ++k) {
    if (told_[static_cast<std::size_t>(k)] < plan_.probe_nats) found |= bit(k);
  }
  return found & among;
}

bool Diagnosis::in_grey_zone(int technique) const {
  const double p = sums_.marginal(technique);
  return p > 1 - plan_.not_yet && p < plan_.has_it;
}

bool Diagnosis::decided() const {
  for (int k = 0; k < bank_->model.techniques; ++k) {
    if ((bank_->model.critical & bit(k)) != 0 && in_grey_zone(k)) return false;
  }
  return true;
}

// Misconceptions, as bits, that may still be given a confirming item.
Bits Diagnosis::suspected() const {
  Bits found = 0;
  for (int b = 0; b < bank_->model.misconceptions; ++b) {
    const double p = sums_.marginal(bank_->model.techniques + b);
    const bool open = confirming_[static_cast<std::size_t>(b)] < plan_.most_confirming;
    if (open && p > plan_.suspect_low && p < plan_.suspect_high) {
      found |= bit(bank_->model.techniques + b);
    }
  }
  return found;
}

double Diagnosis::told_now(const Item& item, const Worth& worth, int technique) const {
  // Of techniques without weight it is not worked out how much an item tells now.
  if (in_grey_zone(technique) && (bank_->model.critical & bit(technique)) != 0)
    return worth.about[static_cast<std::size_t>(technique)];
  double told = 0;
  for (const Piece& piece : item.pieces) {
    told = std::max(told, told_at_even_odds(sums_, piece, technique));
  }
  return told;
}

Worth Diagnosis::worth_of(int item) const {
  return worth(bank_->model, sums_, bank_->items[static_cast<std::size_t>(item)]);
}

void Diagnosis::ask(int item) {
  const Item& asked = bank_->items[static_cast<std::size_t>(item)];
  const Bits touched = asked.touches();
  if (finished_) sums_.sum_within(posterior_, touched);
  const Worth now = worth(bank_->model, sums_, asked, touched & to_probe());
  const Bits suspects = finished_ ? 0 : suspected();  // only next() goes by it
  for (int k = 0; k < bank_->model.techniques; ++k) {
    if ((to_probe() & bit(k)) == 0) continue;
    // Only an item that asks for the technique itself is a direct question about it.
    if ((touched & bit(k)) != 0) told_[static_cast<std::size_t>(k)] += told_now(asked, now, k);
  }
  for (int b = 0; b < bank_->model.misconceptions; ++b) {
    const Bits held = bit(bank_->model.techniques + b);
    if ((touched & held) == 0) continue;
    ++asked_about_[static_cast<std::size_t>(b)];
    if ((suspects & held) != 0) ++confirming_[static_cast<std::size_t>(b)];
  }
  asked_.push_back(item);
}

void Diagnosis::answer(int item, std::span<const int> columns) {
  posterior_.update_each(bank_->items[static_cast<std::size_t>(item)].pieces, columns);
  if (!finished_) sums_.sum(posterior_.states());
}

double Diagnosis::index_of(const Candidate& candidate, Bits unprobed) const {
  double index = candidate.told;
  if ((candidate.touches & unprobed) != 0) index *= plan_.unprobed_boost;
  const int kind = bank_->items[static_cast<std::size_t>(candidate.item)].kind;
  const std::size_t last_two = asked_.size() < 2 ? asked_.size() : 2;
  for (std::size_t back = 1; back <= last_two; ++back) {
    const auto before = static_cast<std::size_t>(asked_[asked_.size() - back]);
    if (bank_->items[before].kind == kind) index *= plan_.same_kind;
  }
  return index;
}

// Weighs every item not yet asked, and plans how to cover what is unprobed.
Diagnosis::Survey Diagnosis::survey() const {
  std::vector<bool> used(bank_->items.size(), false);
  for (const int item : asked_) used[static_cast<std::size_t>(item)] = true;
  const Bits open = unprobed(to_probe());
  const Bits suspects = suspected();
  Survey found;
  found.list.reserve(used.size());
  for (std::size_t i = 0; i < used.size(); ++i) {
    if (used[i]) continue;
    const Item& item = bank_->items[i];
    const Worth now = worth(bank_->model, sums_, item);
    const double told = plan_.aim == Aim::decision ? now.decision : now.whole;
    Candidate made{static_cast<int>(i), item.touches(), told, 0, 0, false};
    made.index = index_of(made, open);
    for (Bits left = suspects & made.touches; left != 0; left &= left - 1) {
      made.confirms += now.about[static_cast<std::size_t>(std::countr_zero(left))];
    }
    found.list.push_back(made);
    for (Bits left = open; left != 0; left &= left - 1) {
      const int k = std::countr_zero(left);
      found.offers.push_back((made.touches & bit(k)) != 0 ? told_now(item, now, k) : 0);
    }
  }
  plan_cover_of(found, open, open);
  // Not all fit: then at least what somebody asked for.
  const int slots = plan_.most - static_cast<int>(asked_.size());
  const Bits asked_for = open & plan_.must;
  if (found.needed > slots && asked_for != 0) plan_cover_of(found, open, asked_for);
  return found;
}

// offers hold a number for every technique of `open`; wanted: those of them to be covered.
void Diagnosis::plan_cover_of(Survey& survey, Bits open, Bits wanted) const {
  survey.needed = 0;
  if (wanted == 0) return;
  std::vector<double> missing, offers;
  for (Bits left = wanted; left != 0; left &= left - 1) {
    const auto k = static_cast<std::size_t>(std::countr_zero(left));
    missing.push_back(plan_.probe_nats - told_[k]);
  }
  const double* offer = survey.offers.data();
  offers.reserve(survey.list.size() * missing.size());
  for (std::size_t i = 0; i < survey.list.size(); ++i) {
    for (Bits left = open; left != 0; left &= left - 1, ++offer) {
      if ((wanted & bit(std::countr_zero(left))) != 0) offers.push_back(*offer);
    }
  }
  const Cover cover = plan_cover(missing, offers);
  survey.needed = cover.fewest;
  for (std::size_t i = 0; i < survey.list.size(); ++i) survey.list[i].covers = cover.is_step[i];
}

Stop Diagnosis::stop_now(const Survey& survey) const {
  const int count = static_cast<int>(asked_.size());
  if (count >= plan_.most) return Stop::longest;
  if (survey.list.empty()) return Stop::no_item_left;
  if (!plan_.may_stop || count < plan_.fewest || survey.needed > 0) return Stop::go_on;
  double best = 0;
  bool may_confirm = false;
  for (const Candidate& candidate : survey.list) {
    best = std::max(best, candidate.told);
    may_confirm = may_confirm || candidate.confirms > 0;
  }
  if (may_confirm) return Stop::go_on;
  if (decided()) return Stop::decided;
  return best < plan_.useful_nats ? Stop::nothing_useful : Stop::go_on;
}

int Diagnosis::choose(const std::vector<Candidate>& list, std::span<const int> recent) const {
  double best = 0;
  double best_fresh = -1;  // none
  const auto is_recent = [&](const Candidate& candidate) {
    return std::find(recent.begin(), recent.end(), candidate.item) != recent.end();
  };
  for (const Candidate& candidate : list) {
    best = std::max(best, candidate.index);
    if (!is_recent(candidate)) best_fresh = std::max(best_fresh, candidate.index);
  }
  const bool fresh_only = best_fresh >= best * (1 - plan_.near_recent);
  const double bound = (fresh_only ? best_fresh : best) * (1 - plan_.near);
  std::vector<int> near;
  for (const Candidate& candidate : list) {
    if (candidate.index < bound || (fresh_only && is_recent(candidate))) continue;
    near.push_back(candidate.item);
  }
  Rng rng(seed_ + 0x9e3779b97f4a7c15ULL * (asked_.size() + 1));
  return near[static_cast<std::size_t>(rng.below(near.size()))];
}

Next Diagnosis::next(std::span<const int> recent) const {
  Survey survey = this->survey();
  const Stop stop = stop_now(survey);
  if (stop != Stop::go_on) return {stop, -1};
  const auto keep_if = [&list = survey.list](auto wanted) {
    if (std::none_of(list.begin(), list.end(), wanted)) return;
    std::erase_if(list, [&](const Candidate& candidate) { return !wanted(candidate); });
  };
  const int slots = plan_.most - static_cast<int>(asked_.size());
  if (survey.needed > 0 && survey.needed + plan_.spare >= slots) {
    keep_if([](const Candidate& candidate) { return candidate.covers; });
  }
  keep_if([](const Candidate& candidate) { return candidate.confirms > 0; });
  for (Candidate& candidate : survey.list) {
    if (candidate.confirms > 0) candidate.index = candidate.confirms;
  }
  return {Stop::go_on, choose(survey.list, recent)};
}

Verdict Diagnosis::verdict() const {
  const Model& model = bank_->model;
  SupersetSums fresh;
  if (finished_) fresh.sum(posterior_.states());
  const SupersetSums& sums = finished_ ? fresh : sums_;
  const Bits open = unprobed(bank_->model.critical);
  Bits touched = 0;
  for (const int item : asked_) touched |= bank_->items[static_cast<std::size_t>(item)].touches();
  Verdict verdict;
  for (int k = 0; k < model.techniques; ++k) {
    const double p = sums.marginal(k);
    const bool probed = (touched & bit(k)) != 0 && (open & bit(k)) == 0;
    Label label = Label::unsure;
    if (p >= plan_.has_it && (probed || (model.critical & bit(k)) == 0)) label = Label::has_it;
    if (p <= 1 - plan_.not_yet) label = Label::not_yet;
    verdict.techniques.push_back({p, probed, label});
  }
  for (int b = 0; b < model.misconceptions; ++b) {
    const double p = sums.marginal(model.techniques + b);
    const bool confirmed = asked_about_[static_cast<std::size_t>(b)] >= 2;
    Held held = Held::unsure;
    if (p >= plan_.report_held && confirmed) held = Held::held;
    if (p <= 1 - plan_.report_held) held = Held::not_held;
    verdict.misconceptions.push_back({p, confirmed, held});
  }
  return verdict;
}

}  // namespace rehale::mastery
