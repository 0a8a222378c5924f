// rehale_demo_group CONTENT_DIR [PEOPLE] [SEED]: codes of an invented group, one a line, all marked
// as made up. CONTENT_DIR: assets, or content/ of a built page (whose desk then reads them).
// rehale_demo_group --find CONTENT_DIR [PEOPLE] [SEED]: reads these codes back as a desk would and
// prints its tables as CSV: what to teach first by language, before and after, and times.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "core/catalog/content_id.h"
#include "core/check/family_bank.h"
#include "core/cohort/tables.h"
#include "core/exchange/csv.h"
#include "tests/support/demo_group.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;
using Courses = std::vector<std::unique_ptr<check::Course>>;

Courses load(const std::string& folder) {
  std::vector<catalog::Finding> missing;
  Courses courses;
  const auto library =
      catalog::load_library(support::read_content(folder, "library.json", missing)).value;
  if (!library) return courses;
  for (const auto& id : library->families) {
    auto files = support::read_family(folder, *library, id, missing);
    files.poses.reset();
    auto family = catalog::load_family(*library, id, files);
    std::fputs(support::said(family.findings).c_str(), stderr);
    if (!family.value) return {};
    auto course = check::make_course(*std::move(family.value),
                                     catalog::content_id(files.procedure, files.questions));
    courses.push_back(std::make_unique<check::Course>(*std::move(course)));
  }
  return courses;
}

std::vector<std::string> codes_of(const support::DemoPlan& plan, const Courses& courses) {
  std::vector<const check::Course*> all;
  for (const auto& course : courses) all.push_back(course.get());
  std::vector<std::string> codes;
  support::demo_group(plan, all, [&codes](const auto& course, const auto& result) {
    codes.push_back(exchange::write_result(result.head, result.log, course.family).value_or(""));
  });
  return codes;
}

std::optional<cohort::Record> read(const std::string& code, const Courses& courses) {
  const auto result = exchange::read_result(code);
  if (!result) return {};
  for (const auto& course : courses) {
    const auto log = exchange::log_of(*result, course->family, course->content);
    if (!log) continue;
    const auto record = cohort::record_of(*course, *log,
                                          {.key = exchange::run_key(*result),
                                           .again = result->head.again,
                                           .helped = result->head.helped,
                                           .made_up = result->head.made_up,
                                           .day = result->head.day,
                                           .person = result->head.person});
    if (record) return *record;
  }
  return {};
}

void share(exchange::Csv& csv, const cohort::Share& share) {
  csv.number(share.k).number(share.n).number(share.low, 4).number(share.high, 4);
}

void print_tables(const cohort::Summary& summary, const check::Course& course) {
  exchange::Csv csv;
  const auto& family = course.family;
  std::vector<cohort::TeachWeight> weights;
  for (const auto& technique : family.techniques) {
    weights.push_back({technique.critical, technique.weight});
  }
  for (const char* language : {"en", "pt"}) {
    const auto table = cohort::technique_table(
        summary, {.family = family.id, .language = language, .again = false});
    for (const auto& row : cohort::teach_first(table, weights)) {
      csv.text("teach").text(family.id).text(language).text(family.techniques[row.technique].id);
      share(csv, row.not_yet);
      csv.number(row.key, 4).end_row();
    }
  }
  for (const auto& row : cohort::before_after(summary, family.id, family.techniques.size())) {
    csv.text("pairs").text(family.id).text("").text(family.techniques[row.technique].id);
    csv.number(row.pairs).number(row.gained).number(row.lost).number(row.p, 6).empty().end_row();
  }
  std::fputs(csv.str().c_str() + 3, stdout);
}

int find(const std::vector<std::string>& codes, const Courses& courses) {
  const auto start = std::chrono::steady_clock::now();
  std::vector<cohort::Record> records;
  for (const std::string& code : codes) {
    auto record = read(code, courses);
    if (!record) return std::fprintf(stderr, "unread: %s\n", code.c_str()), 1;
    records.push_back(*std::move(record));
  }
  cohort::drop_copies(records);
  const auto summary = cohort::summarise(records);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  for (const auto& course : courses) print_tables(summary, *course);
  std::printf("read,%zu,,,%.3f,,,,\r\n", records.size(), took.count());
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  const bool finding = count > 1 && std::string(arguments[1]) == "--find";
  const int at = finding ? 2 : 1;
  if (count <= at) {
    std::fprintf(stderr, "usage: rehale_demo_group [--find] CONTENT_DIR [PEOPLE] [SEED]\n");
    return 2;
  }
  const Courses courses = load(std::string(arguments[at]) + "/");
  if (courses.empty()) return 1;
  support::DemoPlan plan;
  if (count > at + 1) plan.people = std::strtoul(arguments[at + 1], nullptr, 10);
  if (count > at + 2) plan.seed = std::strtoull(arguments[at + 2], nullptr, 10);
  const auto codes = codes_of(plan, courses);
  if (finding) return find(codes, courses);
  for (const std::string& code : codes) std::printf("%s\n", code.c_str());
  return 0;
}
