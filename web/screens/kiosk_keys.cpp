// The sentences of a shared device.
#include "web/screens/interface_keys.h"

namespace rehale::screens {

namespace {

constexpr const char* k_kiosk_keys[] = {
    "kiosk/title",        "kiosk/ask",          "kiosk/lead",         "kiosk/private",
    "kiosk/picture",      "kiosk/start",        "kiosk/aloud",        "kiosk/still",
    "kiosk/staff",        "kiosk/idle-title",   "kiosk/idle-tell",    "kiosk/idle-stay",
    "kiosk/done",         "kiosk/result-title", "kiosk/result-lead",  "kiosk/show",
    "kiosk/unseen",       "kiosk/scan",         "kiosk/clean",        "kiosk/clean-title",
    "kiosk/clean-lead",   "kiosk/clean-left",   "kiosk/today",        "kiosk/checks",
    "kiosk/of",           "kiosk/none",         "kiosk/few",          "kiosk/save",
    "kiosk/delete",       "kiosk/deleted",      "kiosk/begin",        "kiosk/begin-how",
    "kiosk/set-up",       "kiosk/set-up-done",  "kiosk/health",       "kiosk/minutes",
    "kiosk/memory",       "kiosk/visits",       "kiosk/late",         "kiosk/failures",
    "kiosk/leave",        "kiosk/plain-title",  "kiosk/plain-lead",   "kiosk/plain-leaflet",
    "kiosk/plain-scan",   "kiosk/code-title",   "kiosk/code-lead",    "kiosk/code-new",
    "kiosk/code-wrong",   "kiosk/code-go",      "kiosk/code-back",    "kiosk/code-erase",
    "kiosk/aloud-how",    "kiosk/say-button",   "kiosk/say-switch",   "kiosk/say-choice",
    "kiosk/say-box",      "kiosk/say-number",   "kiosk/say-link",     "kiosk/say-on",
    "kiosk/say-off",      "kiosk/say-open",     "kiosk/say-shut",     "kiosk/say-chosen",
    "kiosk/say-unchosen", "kiosk/say-ticked",   "kiosk/say-unticked", "kiosk/say-resting",
    "kiosk/say-place"};

}  // namespace

std::span<const char* const> kiosk_keys() { return k_kiosk_keys; }

}  // namespace rehale::screens
