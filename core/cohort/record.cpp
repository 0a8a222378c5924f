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

Change change_of(Told was, Told is) {
  if (was == Told::not_yet && is == Told::has_it) return Change::gained;
  return was == Told::has_it && is == Told::not_yet ? Change::lost : Change::none;
}

// Critical techniques of a family, a bit each.
std::uint32_t critical_of(const std::vector<Critical>& critical, const Id& family) {
  const auto found = std::ranges::find(critical, family, &Critical::family);
  return found == critical.end() ? 0 : found->techniques;
}

// Sorted by person and family, then by day: the check before is the neighbour. What is compared
// stands in it, as records of a large group lie far apart.
struct TrackPlace {
  std::uint32_t person = 0;
  Day day = 0;
  std::string_view family;
  std::size_t record = 0;
};

bool comes_before(const TrackPlace& one, const TrackPlace& other) {
  return std::tie(one.person, one.family, one.day, one.record) <
         std::tie(other.person, other.family, other.day, other.record);
}

int lost_between(const Record& before, const Record& after) {
  int lost = 0;
  for (std::size_t k = 0; k < std::min(before.techniques.size(), after.techniques.size()); ++k) {
    const Change change = change_of(before.techniques[k].told, after.techniques[k].told);
    lost += change == Change::lost ? 1 : 0;
  }
  return lost;
}

// For each record how much was lost since the same person's check before; 0 where there is none.
std::vector<int> lost_since(const std::vector<Record>& records) {
  std::vector<TrackPlace> known;
  for (std::size_t n = 0; n < records.size(); ++n) {
    const Record& record = records[n];
    if (record.person) known.push_back({*record.person, record.day, record.family, n});
  }
  std::ranges::sort(known, comes_before);
  std::vector<int> lost(records.size());
  for (std::size_t n = 1; n < known.size(); ++n) {
    const TrackPlace &before = known[n - 1], &after = known[n];
    if (before.person != after.person || before.family != after.family) continue;
    lost[after.record] = lost_between(records[before.record], records[after.record]);
  }
  return lost;
}

SeeFirst see_first_of(const Record& record, std::uint32_t critical) {
  SeeFirst row{.day = record.day};
  for (std::size_t k = 0; k < record.techniques.size(); ++k) {
    if (((critical >> k) & 1U) == 0) continue;
    row.critical_not_yet += record.techniques[k].told == Told::not_yet ? 1 : 0;
    row.critical_unprobed += record.techniques[k].told == Told::unprobed ? 1 : 0;
  }
  return row;
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
    all[k] = change_of(before.techniques[k].told, after.techniques[k].told);
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
  order.reserve(records.size());
  for (std::size_t n = 0; n < records.size(); ++n) {
    SeeFirst row = see_first_of(records[n], critical_of(critical, records[n].family));
    row.record = n;
    row.lost = lost[n];
    order.push_back(row);
  }
  const auto place = [](const SeeFirst& row) {
    return std::tuple(-row.critical_not_yet, -row.lost, -row.critical_unprobed, row.day,
                      row.record);
  };
  std::ranges::sort(order, {}, place);
  return order;
}

}  // namespace rehale::cohort
