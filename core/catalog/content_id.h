// Names the questions and rules a run was made with; texts may change without making it another.
#pragma once

#include <string>

#include "core/base/hash.h"
#include "core/catalog/model.h"

namespace rehale::catalog {

// 16 hex digits over the bytes of procedure.json and questions.json as they were served.
[[nodiscard]] inline std::string content_id(const ContentFile& procedure,
                                            const ContentFile& questions) {
  std::uint64_t hash = fnv1a(questions.bytes, fnv1a(procedure.bytes));
  std::string text(16, '0');
  for (std::size_t n = 16; n-- > 0; hash >>= 4U) text[n] = "0123456789abcdef"[hash & 15U];
  return text;
}

}  // namespace rehale::catalog
