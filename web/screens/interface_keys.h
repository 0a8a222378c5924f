// The interface sentences the screens cannot do without. Must not know drawing.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/catalog/model.h"

namespace rehale::screens {

// Paths in assets/text/<language>.json that a screen asks for by name.
// tests/node/interface_texts.mjs holds them against the sources.
[[nodiscard]] const std::vector<std::string>& interface_keys();

// Parts of them, in files of their own.
[[nodiscard]] std::span<const char* const> hand_over_keys();
[[nodiscard]] std::span<const char* const> desk_keys();
[[nodiscard]] std::span<const char* const> set_keys();
[[nodiscard]] std::span<const char* const> settings_keys();
[[nodiscard]] std::span<const char* const> between_visits_keys();
[[nodiscard]] std::span<const char* const> kiosk_keys();
[[nodiscard]] std::span<const char* const> about_keys();

// A finding "missing-text" for each that is not there.
[[nodiscard]] std::vector<catalog::Finding> missing_interface_texts(const catalog::Texts& texts,
                                                                    const std::string& file);

}  // namespace rehale::screens
