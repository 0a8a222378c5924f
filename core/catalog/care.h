// Counting, replacing, priming and cleaning of one family as numbers with their sources
// (assets/families/<family>/care.json). Defaults only: the leaflet of the person's own inhaler
// wins. Must not know what is done with them.
#pragma once

#include "core/catalog/load.h"

namespace rehale::catalog {

struct Care {
  Id family;
  // target: what is used where the leaflet is silent; pass: what leaflets say, lowest to highest.
  // "doses" (in a full one), "refill" (days before the end to ask for a new one), and where the
  // family needs it: "in_use" (after opening), "refill_as_needed" (doses left), "prime_new",
  // "prime_idle", "prime_after_wash" (sprays), "prime_idle_after", "prime_full_after" (days
  // unused), "clean_every" (days).
  std::vector<Criterion> numbers;

  [[nodiscard]] const Criterion* find(const Id& id) const;  // nullptr when the family has none
};

// Findings: form, "unknown-number", "missing-number", "unknown-unit" (each number has its units),
// "out-of-range", and those of every criterion.
[[nodiscard]] Loaded<Care> load_care(const Library& library, const Id& family,
                                     const ContentFile& file);

}  // namespace rehale::catalog
