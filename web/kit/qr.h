// A QR code in the flow of the body: black on white in every scheme, quiet zone of 4 modules
// (ISO/IEC 18004), whole device pixels a module. Must not know what it says.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::kit {

struct QrCode {
  std::string id;
  std::string alternative;  // what it is, in words
  std::string lines;        // rows of '0' and '1', '1' is dark, parted by line breaks; square
};
void qr_code(Ui& ui, const QrCode& code);

}  // namespace rehale::kit
