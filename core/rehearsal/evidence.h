// What a run-through tells the diagnosis: one mark for each technique it had something to say
// about.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/mastery/evidence.h"
#include "core/rehearsal/account.h"

namespace rehale::rehearsal {

// A piece for the posterior, and the column that came up.
struct Evidence {
  int technique = 0;
  mastery::Piece piece;
  int column = mastery::k_met;
};

// Which mark a technique gets is fixed by the family's content, never by how it went: its bit and,
// when exactly one misconception against it can show in the run-through, that one's bit. Several
// criteria of one technique are one mark: they are not independent of each other. A guided take
// tells nothing. model: of the family (techniques first, then misconceptions). Errors: as
// mastery::mark_piece.
[[nodiscard]] Result<std::vector<Evidence>> evidence_of(const mastery::Model& model,
                                                        const catalog::Family& family,
                                                        const Take& take, const Account& account);

}  // namespace rehale::rehearsal
