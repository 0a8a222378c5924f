// A group from file to table: codes of an invented group, read, worked out again and added up; then
// sorting and filtering. Times as JSON lines (us). rehale_cohort_bench [CHECKS]. What a plain
// script starts from is printed instead with --codes, --runs (the same as JSON, one a line),
// --columns (what the answers of each show, with the families' banks) and --rows (verdicts, as
// CSV).
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>

#include "core/catalog/content_id.h"
#include "core/exchange/envelope.h"
#include "core/exchange/group_csv.h"
#include "core/exchange/intake.h"
#include "core/exchange/run_json.h"
#include "tests/support/bank_json.h"
#include "tests/support/courses.h"
#include "tests/support/demo_group.h"
#include "web/screens/desk_state.h"

namespace {

using namespace rehale;
using Clock = std::chrono::steady_clock;

std::string asset(const std::string& path) {
  return support::read_text(REHALE_SOURCE_DIR "/assets/" + path);
}

// Under the content ids that a built page works out: its desk reads these codes, too.
const exchange::Intake::Courses& courses() {
  static const exchange::Intake::Courses all = [] {
    exchange::Intake::Courses made;
    for (const auto& id : support::shipped_families()) {
      const std::string at = "families/" + id + "/";
      auto course = check::make_course(support::shipped_course(id)->family,
                                       catalog::content_id({"", asset(at + "procedure.json")},
                                                           {"", asset(at + "questions.json")}));
      made.push_back(std::make_shared<const check::Course>(*std::move(course)));
    }
    return made;
  }();
  return all;
}

struct Made {
  const check::Course* course;
  support::DemoResult result;
};

// 500 or so invented checks, each again under other seeds and numbers of persons: other results for
// whoever reads them, with the same answers.
void each_of_group(std::size_t count, const std::function<void(const Made&)>& take) {
  std::vector<const check::Course*> plain;
  for (const auto& course : courses()) plain.push_back(course.get());
  std::vector<Made> made;
  support::demo_group({.people = 360}, plain, [&made](const auto& course, const auto& result) {
    made.push_back({&course, result});
  });
  for (std::size_t n = 0; n < count; ++n) {
    Made copy = made[n % made.size()];
    copy.result.log.front().seed += n / made.size() * 1000003;
    if (auto& person = copy.result.head.person)
      *person += static_cast<std::uint32_t>(n / made.size() * 7919);
    take(copy);
  }
}

std::string codes(std::size_t count) {
  std::string text;
  each_of_group(count, [&text](const Made& one) {
    text += *exchange::write_result(one.result.head, one.result.log, one.course->family);
    text += '\n';
  });
  return text;
}

void told(const char* task, Clock::time_point since) {
  const std::chrono::duration<double, std::micro> took = Clock::now() - since;
  std::printf("{\"task\":\"%s\",\"median_us\":%.0f}\n", task, took.count());
}

// In pieces, as the page does.
void read(screens::Desk& desk, const std::string& text) {
  constexpr std::size_t k_piece = 65536;
  desk.begin_reading(courses());
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end =
        std::min(text.find('\n', std::min(text.size(), at + k_piece)), text.size() - 1) + 1;
    desk.take("text 0 1 bench\n" + text.substr(at, end - at));
    at = end;
  }
  desk.end_reading();
}

// From codes to what was answered, without working out what it means.
std::size_t read_answers(const std::string& text) {
  std::size_t answers = 0;
  for (const auto& found : exchange::find_codes(text)) {
    const auto result = exchange::read_result(found.code);
    for (const auto& course : courses()) {
      if (!result || course->family.id != result->begin.family) continue;
      answers += exchange::log_of(*result, course->family, course->content)->size() / 2;
    }
  }
  return answers;
}

void print_columns(std::size_t count) {
  nlohmann::json banks;
  for (const auto& course : courses())
    banks[course->family.id] = support::bank_to_json(course->bank);
  std::printf("%s\n", banks.dump().c_str());
  each_of_group(count, [](const Made& one) {
    nlohmann::json said{{"family", one.course->family.id}};
    const auto read = check::read_through(*one.course, one.result.log);
    for (const auto& given : read->given)
      said["given"].push_back({given.question, given.marking.columns});
    std::printf("%s\n", said.dump().c_str());
  });
}

void print_runs(std::size_t count) {
  each_of_group(count, [](const Made& one) {
    std::printf("%s\n", exchange::write_log(one.result.log).c_str());
  });
}

int print_rows(const screens::Desk& desk) {
  std::vector<const cohort::Record*> all;
  for (const auto& record : desk.intake.records()) all.push_back(&record);
  for (const auto& course : courses()) {
    const std::vector<std::string> heads(exchange::k_check_heads, "x");
    std::vector<std::string> names;
    for (const auto& technique : course->family.techniques) names.push_back(technique.id);
    const std::string text = exchange::checks_csv(all, course->family.id, heads, names);
    std::fputs(text.c_str() + 3, stdout);
  }
  return 0;
}

int measure_tables(screens::Desk& desk, std::size_t techniques) {
  auto since = Clock::now();
  desk.sort = screens::DeskSort::newest;
  desk.filter_changed();
  told("sort the list", since);
  since = Clock::now();
  desk.filter.again = false;
  desk.filter.language = "pt";
  desk.filter_changed();
  const auto narrow = desk.teach_rows(cohort::technique_table(desk.summary(), desk.filter));
  told("filter the list and the table", since);
  since = Clock::now();
  const auto pairs = cohort::before_after(desk.summary(), desk.filter.family, techniques);
  told("before and after", since);
  return narrow.empty() || pairs.empty() ? 1 : 0;
}

}  // namespace

int main(int count, char** arguments) {
  const std::string wish = count > 1 && arguments[1][0] == '-' ? arguments[1] : "";
  const int at = wish.empty() ? 1 : 2;
  const std::size_t checks = count > at ? std::strtoul(arguments[at], nullptr, 10) : 100'000;
  if (wish == "--columns") return print_columns(checks), 0;
  if (wish == "--runs") return print_runs(checks), 0;
  const std::string text = codes(checks);
  if (wish == "--codes") return std::fputs(text.c_str(), stdout), 0;
  screens::Desk desk;
  auto since = Clock::now();
  if (wish.empty() && read_answers(text) < checks) return 1;
  if (wish.empty()) told("codes to answers", since);
  since = Clock::now();
  read(desk, text);
  const auto read_at = Clock::now();
  if (wish.empty()) told("codes to verdicts", since);
  while (desk.add_up()) {
  }
  const auto table = cohort::technique_table(desk.summary(), desk.filter);
  if (wish == "--rows") return print_rows(desk);
  if (desk.intake.records().size() != checks || table.rows.empty()) return 1;
  told("verdicts to lists and first table", read_at);
  told("from file to table", since);
  return measure_tables(desk, table.rows.size());
}
