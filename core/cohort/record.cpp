#include "core/cohort/record.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string_view>
#include <tuple>

namespace rehale::cohort {

namespace {

Told told_of(const mastery::Verdict::Technique& technique) {
  if (technique.label == mastery::Label::has_it) return Told::has_it;
  if (technique.label == mastery::Label::not_yet) return Told::not_yet;
  return technique.probed ? Told::unsure : Told::unprobed;
}

bool is_critical(const std::vector<Critical>& critical, const Id& family, std::size_t technique) {
  const auto found = std::ranges::find(critical, family, &Critical::family);
  return found != critical.end() && ((found->techniques >> technique) & 1U) != 0;
}

// By person and family, then by day: the check before is the neighbour.
auto track_place(const Record& record) {
  return std::tuple(record.person.value_or(0), std::string_view(record.family), record.day);
}

// For each record how much was lost since the same person's check before; 0 where there is none.
std::vector<int> lost_since(const std::vector<Record>& records) {
  std::vector<const Record*> known;
  for (const Record& record : records) {
    if (record.person) known.push_back(&record);
  }
  std::ranges::stable_sort(known, [](const Record* one, const Record* other) {
    return track_place(*one) < track_place(*other);
  });
  std::vector<int> lost(records.size());
  for (std::size_t n = 1; n < known.size(); ++n) {
    const Record &before = *known[n - 1], &after = *known[n];
    if (before.person != after.person || before.family != after.family) continue;
    lost[static_cast<std::size_t>(&after - records.data())] =
        static_cast<int>(std::ranges::count(changes(before, after), Change::lost));
  }
  return lost;
}

Record made_of(const check::Event& begin, const check::Course& course,
               const check::ReadThrough& read, const Tags& tags) {
  Record record{.key = tags.key, .family = begin.family, .language = begin.language};
  record.again = tags.again;
  record.helped = tags.helped;
  record.made_up = tags.made_up;
  record.day = tags.day;
  record.person = tags.person;
  record.questions = static_cast<std::uint16_t>(course.family.questions.size());
  for (const auto& technique : read.verdict.techniques) {
    const double lacking = std::clamp(1 - technique.probability, 0.0, 1.0);
    record.techniques.push_back(
        {told_of(technique), static_cast<std::uint16_t>(std::lround(lacking * 65535))});
  }
  for (std::size_t b = 0; b < read.verdict.misconceptions.size(); ++b) {
    if (read.verdict.misconceptions[b].held == mastery::Held::held) {
      record.held = static_cast<std::uint16_t>(record.held | (1U << b));
    }
  }
  for (const auto& given : read.given) {
    record.items.push_back(
        {static_cast<std::uint16_t>(given.question), given.marking.right, given.marking.unsure});
  }
  return record;
}

}  // namespace

Record record_of(const check::Run& run, const Tags& tags) {
  return made_of(run.log().front(), run.course(), {run.given(), run.verdict()}, tags);
}

Result<Record> record_of(const check::Course& course, const check::Log& log, const Tags& tags) {
  const auto read = check::read_through(course, log);
  if (!read) return tl::unexpected(read.error());
  return made_of(log.front(), course, *read, tags);
}

std::size_t drop_copies(std::vector<Record>& records) {
  std::vector<std::size_t> order(records.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, [&records](std::size_t one, std::size_t other) {
    return std::pair(records[one].key, records[other].items.size()) <
           std::pair(records[other].key, records[one].items.size());
  });
  std::vector<bool> gone(records.size());
  for (std::size_t n = 1; n < order.size(); ++n) {
    gone[order[n]] = records[order[n]].key == records[order[n - 1]].key;
  }
  std::size_t kept = 0;
  for (std::size_t n = 0; n < records.size(); ++n) {
    if (gone[n]) continue;
    if (kept != n) records[kept] = std::move(records[n]);
    ++kept;
  }
  const std::size_t dropped = records.size() - kept;
  records.resize(kept);
  return dropped;
}

std::vector<Change> changes(const Record& before, const Record& after) {
  std::vector<Change> all(std::min(before.techniques.size(), after.techniques.size()));
  for (std::size_t k = 0; k < all.size(); ++k) {
    const Told was = before.techniques[k].told, is = after.techniques[k].told;
    if (was == Told::not_yet && is == Told::has_it) all[k] = Change::gained;
    if (was == Told::has_it && is == Told::not_yet) all[k] = Change::lost;
  }
  return all;
}

Change overall(const std::vector<Change>& changes) {
  const auto gained = std::ranges::count(changes, Change::gained);
  const auto lost = std::ranges::count(changes, Change::lost);
  if (gained - lost >= 2) return Change::gained;
  return lost - gained >= 2 ? Change::lost : Change::none;
}

std::vector<SeeFirst> see_first(const std::vector<Record>& records,
                                const std::vector<Critical>& critical) {
  const std::vector<int> lost = lost_since(records);
  std::vector<SeeFirst> order;
  for (std::size_t n = 0; n < records.size(); ++n) {
    const Record& record = records[n];
    SeeFirst row{.record = n, .lost = lost[n], .day = record.day};
    for (std::size_t k = 0; k < record.techniques.size(); ++k) {
      if (!is_critical(critical, record.family, k)) continue;
      row.critical_not_yet += record.techniques[k].told == Told::not_yet ? 1 : 0;
      row.critical_unprobed += record.techniques[k].told == Told::unprobed ? 1 : 0;
    }
    order.push_back(row);
  }
  std::ranges::stable_sort(order, [](const SeeFirst& one, const SeeFirst& other) {
    return std::tuple(-one.critical_not_yet, -one.lost, -one.critical_unprobed, one.day) <
           std::tuple(-other.critical_not_yet, -other.lost, -other.critical_unprobed, other.day);
  });
  return order;
}

}  // namespace rehale::cohort
