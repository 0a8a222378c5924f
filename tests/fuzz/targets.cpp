#include "tests/fuzz/targets.h"

#include <algorithm>

#include "core/catalog/care.h"
#include "core/exchange/care_code.h"
#include "core/exchange/cbor.h"
#include "core/exchange/envelope.h"
#include "core/exchange/kept.h"
#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"
#include "tests/fuzz/promise.h"
#include "tests/support/fixture.h"
#include "tests/support/made_codes.h"
#include "tests/support/shipped.h"

namespace rehale::fuzz {

namespace {

// A log that was read is written and read again to the same; and it replays or says why not.
void follow(const check::Log& log) {
  const auto& course = support::ok_course();
  const auto code = exchange::write_result({}, log, course.family);
  if (code) {
    const auto again = exchange::read_result(*code);
    promise(again.has_value(), "what we write we read");
    promise(exchange::log_of(*again, course.family, log.front().content).has_value(),
            "what we write is a log");
  }
  const auto run = check::Run::replay(course, log);
  if (!run) promise_told(run.error());
}

// Whatever was told of an inhaler: days come out of it, or a word on what is amiss.
void follow_care(const exchange::CareState& told) {
  constexpr Day k_today = 20782;
  static const catalog::Care shipped = support::care_of("soft-mist");
  const supply::Holding holding{.left = told.left,
                                .a_day = told.doses_a_day * told.puffs,
                                .opened = told.opened,
                                .expiry = told.expiry,
                                .leaflet = told.leaflet};
  const auto plan = supply::plan(shipped, holding, k_today);
  if (!plan) promise_told(plan.error());
  const int unused = told.used ? std::max(0, k_today - *told.used) : 0;
  (void)supply::priming(shipped, told.leaflet, {.is_new = told.is_new, .days_unused = unused});
  (void)supply::cleaning_days(shipped, told.leaflet, told.cleaned, k_today, 3);
}

}  // namespace

void code(Input input) {
  for (const auto& found : exchange::find_codes(text_of(input))) {
    const auto result = exchange::read_result(found.code);
    if (!result) promise_told(result.error());
    const auto assignment = exchange::read_assignment(found.code);
    if (!assignment) promise_told(assignment.error());
    const auto sealed = exchange::read_sealed(found.code);
    if (!sealed) promise_told(sealed.error());
    const auto care = exchange::read_care(found.code);
    if (!care) promise_told(care.error());
  }
}

namespace {

void result_of(int version, Input input) {
  auto read = exchange::unpack_result(version, input);
  if (!read) return promise_told(read.error());
  const auto& course = support::ok_course();
  (void)exchange::run_key(*read);
  // As if it were of this content: else the list of answers would hardly ever be looked at.
  read->begin.family = course.family.id;
  read->begin.content = course.content;
  const auto log = exchange::log_of(*read, course.family, course.content);
  if (!log) return promise_told(log.error());
  follow(*log);
}

}  // namespace

void result(Input input) {
  for (int version = 1; version <= exchange::k_result_version; ++version) result_of(version, input);
}

void assignment(Input input) {
  const auto code =
      exchange::write_envelope(exchange::Kind::assignment, 1, {input.begin(), input.end()});
  const auto read = exchange::read_assignment(code);
  if (!read) return promise_told(read.error());
  const auto again = exchange::write_assignment(*read);
  promise(again.has_value(), "what we read we write");
  promise(exchange::read_assignment(*again) == *read, "an assignment comes back");
}

void sealed(Input input) {
  const auto code =
      exchange::write_envelope(exchange::Kind::sealed, 1, {input.begin(), input.end()});
  const auto read = exchange::read_sealed(code);
  if (!read) return promise_told(read.error());
  // As if the key had opened it.
  const auto opened = exchange::read_opened(*read, read->sealed);
  if (opened) promise(opened->head.assignment == read->assignment, "a seal names its assignment");
  else promise_told(opened.error());
  const auto again = exchange::write_sealed(*read);
  promise(again.has_value() && exchange::read_sealed(*again) == *read, "a sealed code comes back");
}

void care(Input input) {
  const auto read = exchange::unpack_care(input);
  if (!read) return promise_told(read.error());
  const auto again = exchange::write_care(*read);
  promise(again.has_value() && exchange::read_care(*again) == *read, "one inhaler comes back");
  follow_care(*read);
}

void kept(Input input) {
  const auto read = exchange::read_kept(text_of(input));
  if (!read) return promise_told(read.error());
  const std::string text = exchange::write_kept(*read);
  const auto again = exchange::read_kept(text);
  promise(again.has_value() && again->unreadable == 0, "what we keep we read");
  promise(again->results.size() == read->results.size() && again->care == read->care,
          "what was kept comes back");
  promise(exchange::write_kept(*again) == text, "and stays as it is");
}

void cbor(Input input) {
  const auto read = exchange::read_cbor(input);
  if (!read) return promise_told(read.error());
  const auto bytes = exchange::write_cbor(*read);
  const auto again = exchange::read_cbor(bytes, {.bytes = 8 * bytes.size() + 64});
  promise(again.has_value(), "what we write we read");
  promise(exchange::write_cbor(*again) == bytes, "bytes come back");  // also where a NaN is inside
}

void run_json(Input input) {
  const auto log = exchange::read_log(text_of(input));
  if (!log) return promise_told(log.error());
  const auto again = exchange::read_log(exchange::write_log(*log));
  promise(again.has_value() && *again == *log, "a log comes back");
  follow(*log);
}

void content(Input input) {
  static const catalog::Library library = support::ok_library();
  const catalog::ContentFile file{"file.json", std::string(text_of(input))};
  const auto care = catalog::load_care(library, "spray", file);
  promise(care.value.has_value() == care.findings.empty(), "a value or findings");
  const auto texts = catalog::load_texts(file);
  promise(texts.value.has_value() == texts.findings.empty(), "a value or findings");
  const auto loaded = catalog::load_library(file);
  promise(loaded.value.has_value() == loaded.findings.empty(), "a value or findings");
  auto files = support::ok_files();
  files.questions.bytes = file.bytes;
  const auto family = catalog::load_family(library, "bubble-pipe", files);
  promise(family.value.has_value() == family.findings.empty(), "a value or findings");
}

}  // namespace rehale::fuzz
