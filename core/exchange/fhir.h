// One run as a FHIR R4 bundle (collection): the questionnaire as it was asked, the answers, and one
// survey observation with what they show. Own code system, no invented standard codes, no person.
// Must not know where texts stand on screen.
#pragma once

#include <string>

#include "core/catalog/model.h"
#include "core/check/run.h"
#include "core/exchange/result_code.h"

namespace rehale::exchange {

// Sentences of the person's language.
struct FhirWords {
  std::string title;   // "Inhaler self-check: spray"
  std::string origin;  // "Self-reported, not observed"
  std::string unsure;  // "I'm not sure"
};

// `texts`: the family's. `key`: run_key, from which the ids of the parts are made. Errors:
// "missing-text" with its path.
[[nodiscard]] Result<std::string> write_fhir(const check::Run& run, const ResultHead& head,
                                             const catalog::Texts& texts, const FhirWords& words,
                                             std::uint64_t key);

// The URI of our codes: "<family>.<question>.<option>", "<family>.<technique>", "has-it"…
inline constexpr const char* k_fhir_system = "urn:uuid:ce053578-bc3a-4258-982e-eb8e7b7b2d09";

}  // namespace rehale::exchange
