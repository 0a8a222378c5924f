// rehale_files WHAT: a file as others read it, on standard output: fhir FAMILY [SEED], calendar.
// For tests that hold it against general libraries (tests/node/files_test.mjs).
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/catalog/load.h"
#include "core/exchange/calendar.h"
#include "core/exchange/fhir.h"
#include "tests/support/courses.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale;

int print(const Result<std::string>& text) {
  if (!text) {
    std::fprintf(stderr, "%s: %s\n", text.error().where.c_str(), text.error().detail.c_str());
    return 1;
  }
  std::fwrite(text->data(), 1, text->size(), stdout);
  return 0;
}

int fhir(const std::string& family, std::uint64_t seed) {
  const auto* course = support::shipped_course(family);
  const std::string path = "families/" + family + "/text.en.json";
  std::vector<catalog::Finding> missing;
  const auto texts =
      catalog::load_texts(support::read_content(support::source_path("assets/"), path, missing));
  if (course == nullptr || !texts.value) return 2;
  const auto& techniques = course->family.techniques;
  support::Script script{.lacks = {techniques[seed % techniques.size()].id}, .seed = seed};
  const auto run = support::scripted_run(*course, script);
  const exchange::FhirWords words{"Self-check: " + family, "Self-reported, not observed",
                                  "I'm not sure"};
  return print(exchange::write_fhir(run, {.day = 20782}, *texts.value, words, seed));
}

int calendar() {
  const exchange::Reminder reminders[] = {
      {"check-1@rehale", 20810, "Check again", "How you use it fades; a short look helps."},
      {"clean-1@rehale", 20785, "Clean it; then let it dry, all night", "Line one\nLine two\\end",
       7, 8},
      {"refill-1@rehale", day_of({2027, 2, 28}),
       "Ask for a new inhaler \xE2\x80\x93 \xC3\xBC\xC3\xB1\xE6\xB0\xB4\xF0\x9F\x8C\xAC in time, "
       "as this "
       "one is used up in a week and the title is long enough to be folded more than once",
       ""}};
  return print(exchange::write_calendar(reminders, {20782, 61261}));
}

}  // namespace

int main(int count, char** arguments) {
  const std::string what = count > 1 ? arguments[1] : "";
  if (what == "fhir" && count > 2) {
    return fhir(arguments[2], count > 3 ? std::strtoull(arguments[3], nullptr, 10) : 1);
  }
  if (what == "calendar") return calendar();
  std::fprintf(stderr, "usage: rehale_files fhir FAMILY [SEED] | calendar\n");
  return 2;
}
