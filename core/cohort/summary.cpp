#include "core/cohort/summary.h"

#include <algorithm>
#include <tuple>

namespace rehale::cohort {

namespace {

auto place(const Slice& slice) { return std::tie(slice.family, slice.language, slice.again); }
auto place(const FamilyItems& items) { return std::tie(items.family); }
auto place(const Track& track) { return std::tie(track.family, track.person); }
auto place(const Track::Check& check) { return std::tie(check.day, check.key); }

void add(TechniqueCount& into, const TechniqueCount& more) {
  into.has_it += more.has_it;
  into.not_yet += more.not_yet;
  into.unsure += more.unsure;
  into.unprobed += more.unprobed;
  into.lacking += more.lacking;
}

void add(ItemCount& into, const ItemCount& more) {
  into.asked += more.asked;
  into.right += more.right;
  into.unsure += more.unsure;
  into.with_rest += more.with_rest;
  into.right_with_rest += more.right_with_rest;
  into.rest += more.rest;
  into.rest_squared += more.rest_squared;
  into.rest_of_right += more.rest_of_right;
}

void add(PairCount& into, const PairCount& more) {
  into.both_asked += more.both_asked;
  into.one_right += more.one_right;
  into.other_right += more.other_right;
  into.both_right += more.both_right;
}

void add(std::int64_t& into, std::int64_t more) { into += more; }

template <class T>
void add_all(std::vector<T>& into, const std::vector<T>& more) {
  if (into.size() < more.size()) into.resize(more.size());
  for (std::size_t n = 0; n < more.size(); ++n) add(into[n], more[n]);
}

void add(Slice& into, const Slice& more) {
  into.checks += more.checks;
  into.helped += more.helped;
  into.made_up += more.made_up;
  add_all(into.techniques, more.techniques);
  add_all(into.held, more.held);
}

void add(FamilyItems& into, const FamilyItems& more) {
  add_all(into.items, more.items);
  add_all(into.pairs, more.pairs);
}

void add(Track& into, const Track& more) {
  if (place(more.first) < place(into.first)) into.first = more.first;
  if (place(into.last) < place(more.last)) into.last = more.last;
}

// Two sorted lists into one; what stands at the same place is added up.
template <class T>
std::vector<T> merged(const std::vector<T>& one, const std::vector<T>& other) {
  std::vector<T> all;
  all.reserve(one.size() + other.size());
  auto a = one.begin(), b = other.begin();
  while (a != one.end() || b != other.end()) {
    if (b == other.end() || (a != one.end() && place(*a) < place(*b))) {
      all.push_back(*a++);
    } else if (a == one.end() || place(*b) < place(*a)) {
      all.push_back(*b++);
    } else {
      all.push_back(*a++);
      add(all.back(), *b++);
    }
  }
  return all;
}

// The element at this place, put in where it belongs. Few of them: a walk is enough.
template <class T>
T& at_place(std::vector<T>& list, const T& blank) {
  auto found = list.begin();
  while (found != list.end() && place(*found) < place(blank)) ++found;
  if (found == list.end() || place(blank) < place(*found)) found = list.insert(found, blank);
  return *found;
}

void count_techniques(const Record& record, Slice& slice) {
  ++slice.checks;
  slice.helped += record.helped ? 1 : 0;
  slice.made_up += record.made_up ? 1 : 0;
  if (slice.techniques.size() < record.techniques.size()) {
    slice.techniques.resize(record.techniques.size());
  }
  for (std::size_t k = 0; k < record.techniques.size(); ++k) {
    const Technique& technique = record.techniques[k];
    TechniqueCount& count = slice.techniques[k];
    count.has_it += technique.told == Told::has_it ? 1 : 0;
    count.not_yet += technique.told == Told::not_yet ? 1 : 0;
    count.unsure += technique.told == Told::unsure ? 1 : 0;
    count.unprobed += technique.told == Told::unprobed ? 1 : 0;
    count.lacking += technique.lacking;
  }
  for (std::size_t b = 0; b < 16; ++b) {
    if (((record.held >> b) & 1U) == 0) continue;
    if (slice.held.size() <= b) slice.held.resize(b + 1);
    ++slice.held[b];
  }
}

void count_items(const Record& record, FamilyItems& family) {
  const std::size_t questions = record.questions;
  if (family.items.size() < questions) {
    family.items.resize(questions);
    family.pairs.resize(questions * (questions - 1) / 2);
  }
  const auto right = std::ranges::count_if(record.items, &Item::right);
  const auto others = static_cast<std::int64_t>(record.items.size()) - 1;
  for (const Item& item : record.items) {
    if (item.question >= questions) continue;
    ItemCount& count = family.items[item.question];
    ++count.asked;
    count.right += item.right ? 1 : 0;
    count.unsure += item.unsure ? 1 : 0;
    if (others < 1) continue;
    const std::int64_t rest = (right - (item.right ? 1 : 0)) * k_rest_unit / others;
    ++count.with_rest;
    count.right_with_rest += item.right ? 1 : 0;
    count.rest += rest;
    count.rest_squared += rest * rest;
    count.rest_of_right += item.right ? rest : 0;
  }
}

void count_pairs(const Record& record, FamilyItems& family) {
  for (const Item& one : record.items) {
    for (const Item& other : record.items) {
      if (one.question >= other.question || other.question >= record.questions) continue;
      const std::size_t high = other.question;
      PairCount& pair = family.pairs[high * (high - 1) / 2 + one.question];
      ++pair.both_asked;
      pair.one_right += one.right ? 1 : 0;
      pair.other_right += other.right ? 1 : 0;
      pair.both_right += one.right && other.right ? 1 : 0;
    }
  }
}

Track track_of(const Record& record) {
  Track::Check check{record.day, record.key, 0, 0};
  for (std::size_t k = 0; k < record.techniques.size() && k < 32; ++k) {
    if (record.techniques[k].told == Told::has_it) check.has_it |= 1U << k;
    if (record.techniques[k].told == Told::not_yet) check.not_yet |= 1U << k;
  }
  return {record.family, *record.person, check, check};
}

void join_tracks(std::vector<Track>& tracks) {
  std::ranges::sort(tracks, [](const Track& a, const Track& b) { return place(a) < place(b); });
  std::size_t kept = 0;
  for (std::size_t n = 1; n < tracks.size(); ++n) {
    if (place(tracks[kept]) == place(tracks[n])) add(tracks[kept], tracks[n]);
    else tracks[++kept] = tracks[n];
  }
  if (!tracks.empty()) tracks.resize(kept + 1);
}

}  // namespace

Summary summarise(std::span<const Record> records) {
  Summary summary;
  for (const Record& record : records) {
    Slice slice{.family = record.family, .language = record.language, .again = record.again};
    count_techniques(record, at_place(summary.slices, slice));
    FamilyItems& items = at_place(summary.items, FamilyItems{.family = record.family});
    count_items(record, items);
    count_pairs(record, items);
    if (record.person) summary.tracks.push_back(track_of(record));
  }
  join_tracks(summary.tracks);
  return summary;
}

Summary sum(const Summary& one, const Summary& other) {
  return {merged(one.slices, other.slices), merged(one.items, other.items),
          merged(one.tracks, other.tracks)};
}

}  // namespace rehale::cohort
