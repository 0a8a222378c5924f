// One person's one check as the numbers a group needs of it: worked out from the run again, never
// taken from anybody's verdict. Must not know codes, files, screens.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/civil.h"
#include "core/check/read_through.h"

namespace rehale::cohort {

using catalog::Id;

enum class Told : unsigned char { unprobed, unsure, has_it, not_yet };

struct Technique {
  Told told = Told::unprobed;
  std::uint16_t lacking = 0;  // probability of lacking it, in 1/65535
};

// A first try of the check; practice is left out.
struct Item {
  std::uint16_t question = 0;
  bool right = false, unsure = false;
};

struct Record {
  std::uint64_t key = 0;  // the same for two copies of one run
  Id family, language;
  bool again = false, helped = false, made_up = false;
  Day day = 0;
  std::optional<std::uint32_t> person;  // pairs checks of one person
  std::uint16_t questions = 0;          // of the family
  std::uint16_t held = 0;               // misconceptions, a bit each
  std::vector<Technique> techniques;    // in the family's order
  std::vector<Item> items;
};

// What a run does not say of itself.
struct Tags {
  std::uint64_t key = 0;
  bool again = false, helped = false, made_up = false;
  Day day = 0;
  std::optional<std::uint32_t> person;
};
[[nodiscard]] Record record_of(const check::Run& run, const Tags& tags);
// The same from a log, without the run: for many results. Errors: those of check::read_through.
[[nodiscard]] Result<Record> record_of(const check::Course& course, const check::Log& log,
                                       const Tags& tags);

// Of copies with the same key the one with most answers stays, the first of equals; order is kept.
// Returns how many went.
std::size_t drop_copies(std::vector<Record>& records);

// ---- one person ---------------------------------------------------------------------------------

enum class Change : unsigned char { none, gained, lost };
// Per technique; only what was told both times, beyond doubt: has it <-> not yet.
[[nodiscard]] std::vector<Change> changes(const Record& before, const Record& after);
// Overall more than noise: at least 2 techniques more gained than lost, or the other way round
// (facts/users.md section 7).
[[nodiscard]] Change overall(const std::vector<Change>& changes);

// Who should be seen first: most critical techniques not there yet, then most lost since the check
// before, then most critical ones never probed, then the oldest check. A list for a teacher, no
// ranking by health.
struct SeeFirst {
  std::size_t record = 0;  // index
  int critical_not_yet = 0, lost = 0, critical_unprobed = 0;
  Day day = 0;
};
struct Critical {
  Id family;
  std::uint32_t techniques = 0;  // a bit each
};
[[nodiscard]] std::vector<SeeFirst> see_first(const std::vector<Record>& records,
                                              const std::vector<Critical>& critical);

}  // namespace rehale::cohort
