// The costly middle of estimate(): one aerosol in one breath, slice by slice, size by size. The
// same sums as one_slice() (single_breath.h), but what does not change is worked out once.
// Must not know: habits, devices.
#pragma once

#include <array>

#include "core/dose/numbers.h"
#include "core/dose/single_breath.h"

namespace rehale::dose {

inline constexpr int k_slices = 12;
inline constexpr int k_curves = 4;

// Where the fine aerosol of a slice lands, per unit that enters, and what the four mouth-throat
// curves let into the lungs.
struct SliceLanded {
  Landed at;
  std::array<double, k_curves> lung{};
};

class Sweep {
 public:
  Sweep(const Bins& bins, const Breath& breath);
  // Sets the flow that mouth and bronchi see; call before slice() and whenever it changes.
  void flow(double local_flow_ml_s);
  // penetration_ml: how much of the breath is still to come, 0 to inspired_ml.
  [[nodiscard]] SliceLanded slice(double penetration_ml) const;

 private:
  struct Size {
    double ln_d, d_um, weight;
    double ln_diffusion, ln_slip, boost;
    double mouth_in[k_curves], mouth_out;
    double bronchi_in, bronchi_out, small_in, small_out;
    double settles, diffuses;  // the alveolar filter's two terms for one second
  };
  // One way through the bronchioles, as far as it is the same for all sizes.
  struct SmallWay {
    double ln_time, in_ln_r, of_ln_d;
  };
  [[nodiscard]] SmallWay small_way(double flow_ml_s) const;
  [[nodiscard]] static double small(const Size& size, const SmallWay& way);
  void prepare(Size& size, const SmallWay& in, const SmallWay& out) const;
  struct Reach;
  [[nodiscard]] Landed through(const Size& size, const Reach& reach) const;

  Breath breath_;
  double swell_, k_;
  std::array<Size, k_bins> sizes_;
};

}  // namespace rehale::dose
