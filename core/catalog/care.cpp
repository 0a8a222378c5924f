#include "core/catalog/care.h"

#include <array>
#include <utility>

#include "core/catalog/read_parts.h"
#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

struct Known {
  const char* id;
  const char* units;  // allowed ones, with a space before and behind each
  bool needed;
};

constexpr std::array<Known, 10> k_known{{
    {"doses", " doses ", true},
    {"refill", " days ", true},
    {"in_use", " days months ", false},
    {"refill_as_needed", " doses ", false},
    {"prime_new", " sprays sprays-after-mist ", false},
    {"prime_idle", " sprays ", false},
    {"prime_after_wash", " sprays ", false},
    {"prime_idle_after", " days ", false},
    {"prime_full_after", " days ", false},
    {"clean_every", " days ", false},
}};

const Known* known(const Id& id) {
  for (const Known& one : k_known)
    if (id == one.id) return &one;
  return nullptr;
}

void validate_number(const Check& check, const Criterion& number, const std::string& pointer) {
  const Known* one = known(number.id);
  if (one == nullptr) {
    check(pointer + "/id", "unknown-number", {"nothing is worked out from \"", number.id, "\""});
    return;
  }
  const std::string units = one->units;
  if (units.find(' ' + number.unit + ' ') == std::string::npos) {
    check(pointer + "/unit", "unknown-unit", {"use one of:", units});
  }
  for (const auto& bound :
       {number.target_low, number.target_high, number.pass_low, number.pass_high}) {
    if (bound && !(*bound >= 0 && *bound <= 1000))
      check(pointer, "out-of-range", {"use 0 to 1000"});
  }
  if (!number.target_low || !number.target_high || !number.pass_low || !number.pass_high)
    check(pointer, "missing-number", {"give target and pass, each with a low and a high number"});
  if (number.id == "clean_every" && number.target_low && *number.target_low < 1)
    check(pointer + "/target", "out-of-range", {"at most once a day"});
  validate_criterion(check, number, pointer);
}

}  // namespace

const Criterion* Care::find(const Id& id) const { return catalog::find(numbers, id); }

Loaded<Care> load_care(const Library& library, const Id& family, const ContentFile& file) {
  Report report;
  Care care{family, {}};
  if (const auto json = parse_json(file, report)) {
    const Reader root(&*json, file.path, "", report);
    root.allow_only({"schema", "family", "numbers"});
    check_head(root);
    check_named(root, "family", family);
    for (const auto& place : root.list("numbers")) care.numbers.push_back(read_criterion(place));
    report.form_is_read();
    const Family none;
    const Check check{library, none, file.path, report};
    expect_unique(check, care.numbers, "/numbers");
    for (std::size_t i = 0; i < care.numbers.size(); ++i)
      validate_number(check, care.numbers[i], at("/numbers", i));
    for (const Known& one : k_known) {
      if (one.needed && care.find(one.id) == nullptr)
        check("/numbers", "missing-number", {"give \"", one.id, "\""});
    }
  }
  Loaded<Care> loaded{std::nullopt, std::move(report.findings())};
  if (loaded.findings.empty()) loaded.value = std::move(care);
  return loaded;
}

}  // namespace rehale::catalog
