#include "core/dose/volumes.h"

#include "core/dose/numbers.h"

namespace rehale::dose {

namespace {

Result<void> check(double height_m, double age_years) {
  if (!k_height_m.holds(height_m)) {
    return fail("outside-range", "height_m", "1.40 to 2.10 m");
  }
  if (!k_age_years.holds(age_years)) {
    return fail("outside-range", "age_years", "18 to 95 years");
  }
  return {};
}

}  // namespace

Result<Volumes> ecsc_volumes(Sex sex, double height_m, double age_years) {
  if (auto ok = check(height_m, age_years); !ok) return tl::unexpected(ok.error());
  const double h = height_m;
  const double a = age_years < 25 ? 25 : age_years;
  if (sex == Sex::man) {
    return Volumes{1000 * (5.76 * h - .026 * a - 4.34), 1000 * (6.10 * h - .028 * a - 4.65),
                   1000 * (7.99 * h - 7.08), 1000 * (2.34 * h + .009 * a - 1.09)};
  }
  return Volumes{1000 * (4.43 * h - .026 * a - 2.89), 1000 * (4.66 * h - .026 * a - 3.28),
                 1000 * (6.60 * h - 5.79), 1000 * (2.24 * h + .001 * a - 1.00)};
}

Result<double> nhanes_forced_vital_ml(Sex sex, double height_m, double age_years) {
  if (auto ok = check(height_m, age_years); !ok) return tl::unexpected(ok.error());
  const double cm2 = 1e4 * height_m * height_m;
  const double a = age_years;
  if (sex == Sex::man) {
    return 1000 * (-.1933 + .00064 * a - .000269 * a * a + .00018642 * cm2);
  }
  return 1000 * (-.3560 + .01870 * a - .000382 * a * a + .00014815 * cm2);
}

Result<double> gli_inspiratory_capacity_ml(Sex sex, double height_m, double age_years) {
  if (auto ok = check(height_m, age_years); !ok) return tl::unexpected(ok.error());
  const double ln_cm = portable_log(100 * height_m);
  return 1000 * (sex == Sex::man
                     ? portable_exp(-10.121688 + .001265 * age_years + 2.188801 * ln_cm)
                     : portable_exp(-9.4438787 - .0002484 * age_years + 2.0312769 * ln_cm));
}

}  // namespace rehale::dose
