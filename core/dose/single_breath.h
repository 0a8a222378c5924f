// One slice of aerosol in one breath with a hold: how far it gets and where it stays.
// The slice form of ICRP 66's filters (facts/aerosol.md 4b). Weak spots: no mixing between slices
// (1 um without a hold comes out a third low), and the hold stretches the alveolar filter beyond
// the seconds it was fitted to (checked against three independent settling laws, 4c).
// Must not know: devices, plumes. The plain form; model.cpp does the same faster, tests compare.
#pragma once

#include "core/dose/lung_filters.h"

namespace rehale::dose {

struct Breath {
  double inspired_ml = 2500, flow_ml_s = 500, hold_s = 10, exhale_ml_s = 500;
  double frc_ml = k_reference_frc_ml;
};

struct Landed {
  double mouth_throat = 0, conducting = 0, alveolar = 0, exhaled = 0;
};

// Of a slice of size d_um that enters while `penetration_ml` of the breath are still to come, at
// `local_flow_ml_s`. penetration_ml from 0 to inspired_ml. The four add to 1.
[[nodiscard]] Landed one_slice(double d_um, double local_flow_ml_s, double penetration_ml,
                               const Breath& breath);

}  // namespace rehale::dose
