// How much air a person of this sex, height and age moves: published prediction equations.
// Healthy white adults; in COPD use .6 to .7 of the predicted inspiratory capacity (from memory).
// Must not know: devices.
#pragma once

#include "core/base/result.h"
#include "core/dose/technique.h"

namespace rehale::dose {

enum class Sex : std::uint8_t { man, woman };

inline constexpr Range k_height_m{1.40, 2.10};
inline constexpr Range k_age_years{18, 95};

// ECSC, Quanjer 1993 (second-hand); fitted to 18-70 years, below 25 as 25 (from memory).
struct Volumes {
  double forced_vital_ml, inspired_vital_ml, total_ml, frc_ml;
  [[nodiscard]] constexpr double inspiratory_capacity_ml() const { return total_ml - frc_ml; }
};
// Error "outside-range" beyond k_height_m or k_age_years.
[[nodiscard]] Result<Volumes> ecsc_volumes(Sex sex, double height_m, double age_years);

// NHANES III, Hankinson 1999, white adults (second-hand). Men from 20 years.
[[nodiscard]] Result<double> nhanes_forced_vital_ml(Sex sex, double height_m, double age_years);

// GLI 2021, median; its age spline (a small term) was not found and is taken as 0.
[[nodiscard]] Result<double> gli_inspiratory_capacity_ml(Sex sex, double height_m,
                                                         double age_years);

// 2.2 mL/kg of ideal weight (NUM96); a poor predictor for one person (BRE: r2 = .0002 in 58).
[[nodiscard]] constexpr double dead_space_ml(double ideal_weight_kg) {
  return 2.2 * ideal_weight_kg;
}

}  // namespace rehale::dose
