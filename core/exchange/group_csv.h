// A group's tables as CSV, hidden cells empty. Column heads and names of techniques come in as
// texts of the person's language. Must not know where these stand.
#pragma once

#include <span>
#include <string>

#include "core/cohort/tables.h"

namespace rehale::exchange {

// One row a technique: name, not yet, of, share, low, high (Wilson), low, high (Clopper and
// Pearson), unclear, of, mean chance of lacking it. `heads` has those 11 texts.
inline constexpr std::size_t k_technique_heads = 11;
[[nodiscard]] std::string technique_csv(const cohort::TechniqueTable& table,
                                        std::span<const std::string> heads,
                                        std::span<const std::string> names);

// Name, people told both times, lacked before, lack after, gained, lost, p (exact McNemar).
inline constexpr std::size_t k_before_after_heads = 7;
[[nodiscard]] std::string before_after_csv(std::span<const cohort::BeforeAfter> rows,
                                           std::span<const std::string> heads,
                                           std::span<const std::string> names);

// Question, right, of, share, low, high, unsure, discrimination.
inline constexpr std::size_t k_item_heads = 8;
[[nodiscard]] std::string item_csv(std::span<const cohort::ItemRow> rows,
                                   std::span<const std::string> heads,
                                   std::span<const std::string> names);

// One row a check: day, family, language, again (0/1), helped (0/1), made up (0/1), right, asked,
// then a column a technique of that family: 1 has it, 0 not yet, empty unclear. Checks of other
// families are left out. `heads` has 8 texts.
inline constexpr std::size_t k_check_heads = 8;
[[nodiscard]] std::string checks_csv(std::span<const cohort::Record* const> records,
                                     const catalog::Id& family, std::span<const std::string> heads,
                                     std::span<const std::string> names);

}  // namespace rehale::exchange
