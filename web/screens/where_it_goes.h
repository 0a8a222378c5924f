// What "Where it goes" keeps: the puff on show, a good one beside it, what the model says of both.
// Must not know drawing.
#pragma once

#include <optional>
#include <string>

#include "core/dose/model.h"

namespace rehale::screens {

enum class Where : unsigned char;  // web/screens/app.h

struct WhereItGoes {
  dose::Technique yours, good;
  dose::Comparison result;
  Where back{};  // where the person came from
  bool open_doubts = false;
};

}  // namespace rehale::screens
