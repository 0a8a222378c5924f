// The sentences of "Help and about".
#include "web/screens/interface_keys.h"

namespace rehale::screens {

namespace {

constexpr const char* k_about_keys[] = {
    "about/title",         "about/offline",   "about/one-file",     "about/version",
    "about/licences",      "about/close",     "about/danger/title", "about/danger/1",
    "about/danger/2",      "about/danger/3",  "about/danger/4",     "about/danger/5",
    "about/danger/6",      "about/danger/7",  "about/what/title",   "about/what/1",
    "about/what/2",        "about/what/3",    "about/limits/title", "about/limits/1",
    "about/limits/2",      "about/limits/3",  "about/safe/title",   "about/safe/1",
    "about/safe/2",        "about/safe/3",    "about/safe/4",       "about/safe/5",
    "about/private/title", "about/private/1", "about/private/2"};

}  // namespace

std::span<const char* const> about_keys() { return k_about_keys; }

}  // namespace rehale::screens
