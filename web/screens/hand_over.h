// The result as something to hand over. Screen state only; the code is core/exchange's.
#pragma once

#include <string>

#include "core/exchange/result_code.h"

namespace rehale::screens {

struct HandOver {
  Day day = 0;           // on which the check was done
  std::string code;      // of the run on show; empty while it is being sealed
  std::string link;      // opens it on this same page
  std::string lines;     // its QR code; empty while it is on its way
  std::string told;      // path of what the last press did; empty: nothing pressed
  std::string plain;     // what was sealed, where it is sealed: never shown
  bool no_seal = false;  // the browser could not seal it: nothing goes out
  bool no_qr = false;    // it could not be had
  bool spelled = false;  // the code to read out is open
};

// "R1aB cdEf …": four letters a group, to be read out.
[[nodiscard]] std::string in_groups(const std::string& code);

}  // namespace rehale::screens
