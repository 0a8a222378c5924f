#include "tests/support/made_codes.h"

#include "core/exchange/care_code.h"
#include "core/exchange/result_code.h"
#include "core/exchange/run_json.h"
#include "core/exchange/sealed_code.h"
#include "tests/support/courses.h"
#include "tests/support/fixture.h"

namespace rehale::support {

namespace {

using exchange::Assignment;
using exchange::RandomId;
using exchange::ResultHead;

RandomId some_id() {
  RandomId id;
  for (std::size_t n = 0; n < id.size(); ++n) id[n] = static_cast<std::uint8_t>(250 - n * 7);
  return id;
}

check::Log with_practice(check::Log log) {
  for (const auto& question : ok_course().family.questions) {
    const double at_ms = log.back().at_ms;
    log.push_back(
        {.what = check::What::retry_shown, .at_ms = at_ms + 800, .question = question.id});
    if (question.kind == catalog::Kind::picture) continue;  // left open
    log.push_back(
        {.what = check::What::retry_answered, .at_ms = at_ms + 3100, .question = question.id});
    log.back().answer = check::right_answer(ok_course().family, question);
  }
  log.back().answer = {.amount = 2.125};  // between the steps
  return log;
}

MadeCode result(const ResultHead& head, const check::Log& log) {
  return {exchange::write_result(head, log, ok_course().family).value_or(""),
          exchange::write_log(log)};
}

// Version 2: an educator set how many questions, or what to look at.
std::vector<MadeCode> made_with_a_plan() {
  const auto& course = ok_course();
  ResultHead head{.page = "0.4.0", .day = 20783};
  head.assignment = some_id();
  Script script{.lacks = {"slow-breath"}, .seed = 11};
  script.questions = 6;
  std::vector<MadeCode> made{result(head, scripted_run(course, script).log())};
  script.focus = {course.family.techniques.front().id, course.family.techniques.back().id};
  made.push_back(result(head, scripted_run(course, script).log()));
  script.questions = 0;
  script.recent = {course.family.questions[5].id};
  made.push_back(result({}, with_practice(scripted_run(course, script).log())));
  return made;
}

}  // namespace

const check::Course& ok_course() {
  static const check::Course course = *check::make_course(ok_family(), k_ok_content);
  return course;
}

std::vector<MadeCode> made_codes(int version) {
  if (version == 2) return made_with_a_plan();
  const auto& course = ok_course();
  const auto log = scripted_run(course, {.lacks = {"slow-breath"}, .holds = {"loads-twice"}}).log();
  auto again = scripted_run(course, {.lacks = {"hold-level"}, .seed = ~0ULL >> 1U}).log();
  again.front().recent = {course.family.questions[2].id, course.family.questions[27].id};
  ResultHead head{.page = "0.3.0", .day = 20782, .helped = true, .again = true};
  head.confidence = 3;
  head.assignment = some_id();
  head.person = 7654321U;
  std::vector<MadeCode> made{result({}, log), result(head, with_practice(again)),
                             result({.made_up = true}, {log[0], log[1]}),  // broken off at once
                             result({.page = "dev"}, {log[0]})};
  Assignment set{.families = {"bubble-pipe"}};
  made.push_back({*exchange::write_assignment(set), ""});
  set = {.families = {"spray", "soft-mist"}, .focus = {"hold-breath"}, .questions = 9};
  set.language = "en";
  set.due = 20800;
  set.expires = 20830;
  set.id = some_id();
  set.key.emplace().fill(9);
  set.key->front() = 4;
  made.push_back({*exchange::write_assignment(set), ""});
  const exchange::SealedResult sealed{some_id(), k_ok_content, *set.key, exchange::Bytes(40, 3)};
  made.push_back({*exchange::write_sealed(sealed), ""});
  exchange::CareState told{.family = "spray", .counted = 20782, .left = 57};
  made.push_back({*exchange::write_care(told), ""});
  told = {.family = "soft-mist", .counted = 20782, .left = 12, .doses_a_day = 2, .puffs = 2};
  told.full = 60;
  told.is_new = true;
  told.opened = 20700;
  told.expiry = 21000;
  told.used = 20781;
  told.cleaned = 20775;
  told.leaflet = {30, 3, 1, 7, 14};
  made.push_back({*exchange::write_care(told), ""});
  return made;
}

}  // namespace rehale::support
