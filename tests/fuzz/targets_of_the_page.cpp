// What the page reads beside codes: lines kept on a device, rehearsals in a saved run, drawings,
// and the heap of results on an educator's desk.
#include <algorithm>
#include <memory>
#include <string>

#include "core/exchange/day_tally.h"
#include "core/exchange/take_json.h"
#include "tests/fuzz/promise.h"
#include "tests/support/made_codes.h"
#include "tests/support/shipped.h"
#include "web/kit/illustration.h"
#include "web/screens/desk_state.h"
#include "web/screens/kept_settings.h"

namespace rehale::fuzz {

void tally(Input input) {
  const auto read = exchange::read_tally(text_of(input));
  if (!read) return promise_told(read.error());
  const auto again = exchange::read_tally(exchange::write_tally(*read));
  promise(again.has_value() && *again == *read, "what was counted comes back");
  for (const auto& family : read->families) {
    promise(family.checks >= 0 && family.checks <= exchange::k_most_tally, "counts are bounded");
    for (const auto& step : family.steps)
      promise(step.not_yet >= 0 && step.not_yet <= family.checks, "no more than were there");
  }
}

void settings(Input input) {
  const auto read = screens::read_settings(text_of(input));
  if (!read) return;
  const float scale = read->look.text_scale;
  promise(scale == 0 || (scale >= 1 && scale <= 2), "a size that fits the screen");
  const auto again = screens::read_settings(screens::write_settings(*read));
  promise(again && again->look == read->look && again->language == read->language,
          "settings come back");
}

void takes(Input input) {
  const auto read = exchange::read_takes(text_of(input));
  if (!read) return promise_told(read.error());
  const auto again = exchange::read_takes(exchange::write_log_with({}, *read));
  promise(again.has_value() && *again == *read, "run-throughs come back");
  for (const auto& take : *read) {
    const auto checked = rehearsal::check_take(support::shipped_family("spray"), take);
    if (!checked) promise_told(checked.error());
  }
}

void scene(Input input) {
  const auto read = kit::parse_scene(text_of(input));
  if (!read) return promise_told(read.error());
  for (const auto& shape : read->shapes)
    promise(shape.first + shape.count <= read->points.size(), "a shape has all its points");
  for (const auto& pose : read->poses) {
    const auto stands = kit::pose_of(*read, {pose.name});
    promise(stands && stands->parts.size() == read->parts.size(), "every pose places every part");
  }
}

namespace {

// Parts in any cut add up to the whole, and everybody is on the list once.
void follow_heap(const screens::Desk& desk) {
  const auto& records = desk.intake.records();
  promise(desk.summary() == cohort::summarise(records), "parts add up to the whole");
  auto listed = desk.people();
  std::ranges::sort(listed);
  promise(listed.size() == records.size() && std::ranges::adjacent_find(listed) == listed.end(),
          "everybody is listed once");
  for (std::size_t n = 0; n < records.size(); ++n)
    promise(exchange::read_result(desk.intake.code(n)).has_value(), "a code opens its own page");
  promise(desk.intake.unread().size() <= exchange::k_listed_unread, "what is listed is bounded");
  for (const auto& one : desk.intake.unread()) promise_told(one.error);
}

}  // namespace

// Pieces as web/js/desk.js gives them, parted by a record separator.
void heap(Input input) {
  static const std::shared_ptr<const check::Course> course(&support::ok_course(),
                                                           [](const check::Course*) {});
  std::string_view text = text_of(input);
  screens::Desk desk;
  desk.begin_reading({course});
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\x1e'), text.size());
    if (!desk.take(text.substr(0, end))) break;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  desk.end_reading();
  while (desk.add_up()) {
  }
  follow_heap(desk);
}

}  // namespace rehale::fuzz
