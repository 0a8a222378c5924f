// The settings as one line of text that can be kept on the device, and back. A line that is no such
// thing gives nothing; a part that is not known is passed over. Must not know where it is kept.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "web/kit/ui.h"

namespace rehale::screens {

struct KeptSettings {
  kit::Look look;
  std::string language;  // "": as the system asks
};

[[nodiscard]] std::string write_settings(const KeptSettings& settings);
[[nodiscard]] std::optional<KeptSettings> read_settings(std::string_view text);

}  // namespace rehale::screens
