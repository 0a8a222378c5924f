// The sentences of the settings.
#include "web/screens/interface_keys.h"

namespace rehale::screens {

namespace {

constexpr const char* k_settings_keys[] = {
    "settings/sample",    "settings/movement",   "settings/hold-still",    "settings/hand",
    "settings/hand-tell", "settings/hand-right", "settings/hand-left",     "settings/read-aloud",
    "settings/read-stop", "settings/read-how",   "settings/read-none",     "settings/read-slowly",
    "settings/keep",      "settings/remember",   "settings/remember-tell", "settings/not-kept",
    "settings/as-device", "settings/loudness",   "settings/loud",          "settings/medium",
    "settings/quiet"};

}  // namespace

std::span<const char* const> settings_keys() { return k_settings_keys; }

}  // namespace rehale::screens
