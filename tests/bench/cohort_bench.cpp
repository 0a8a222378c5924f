// A group from file to table: codes of an invented group, read, worked out again and added up; then
// sorting and filtering. Times as JSON lines (us). rehale_cohort_bench [CHECKS]; with --codes the
// codes are printed instead, with --csv the results as rows: what a plain script starts from.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/catalog/content_id.h"
#include "core/exchange/group_csv.h"
#include "core/exchange/intake.h"
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

// 500 or so invented checks, each again under other seeds and numbers of persons: other results for
// whoever reads them, with the same answers.
std::string codes(std::size_t count) {
  struct Made {
    const check::Course* course;
    support::DemoResult result;
  };
  std::vector<const check::Course*> plain;
  for (const auto& course : courses()) plain.push_back(course.get());
  std::vector<Made> made;
  support::demo_group({.people = 360}, plain, [&made](const auto& course, const auto& result) {
    made.push_back({&course, result});
  });
  std::string text;
  for (std::size_t n = 0; n < count; ++n) {
    Made copy = made[n % made.size()];
    copy.result.log.front().seed += n / made.size() * 1000003;
    if (auto& person = copy.result.head.person)
      *person += static_cast<std::uint32_t>(n / made.size() * 7919);
    text += *exchange::write_result(copy.result.head, copy.result.log, copy.course->family);
    text += '\n';
  }
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

int print_rows(const screens::Desk& desk) {
  for (const auto& course : courses()) {
    const std::vector<std::string> heads(exchange::k_check_heads, "x");
    std::vector<std::string> names;
    for (const auto& technique : course->family.techniques) names.push_back(technique.id);
    const std::string text =
        exchange::checks_csv(desk.intake.records(), course->family.id, heads, names);
    std::fputs(text.c_str() + 3, stdout);
  }
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  const std::string wish = count > 1 ? arguments[1] : "";
  const bool printing = wish == "--codes" || wish == "--csv";
  const int at = printing ? 2 : 1;
  const std::size_t checks = count > at ? std::strtoul(arguments[at], nullptr, 10) : 100'000;
  const std::string text = codes(checks);
  if (wish == "--codes") return std::fputs(text.c_str(), stdout), 0;
  screens::Desk desk;
  auto since = Clock::now();
  read(desk, text);
  const auto read_at = Clock::now();
  if (!printing) told("read all results", since);
  while (desk.add_up()) {
  }
  const auto table = cohort::technique_table(desk.summary(), desk.filter);
  if (wish == "--csv") return print_rows(desk);
  if (desk.intake.records().size() != checks || table.rows.empty()) return 1;
  told("add up, order, first table", read_at);
  told("from file to table", since);
  since = Clock::now();
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
  const auto pairs = cohort::before_after(desk.summary(), desk.filter.family, table.rows.size());
  told("before and after", since);
  return narrow.empty() || pairs.empty() ? 1 : 0;
}
