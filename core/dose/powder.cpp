#include "core/dose/powder.h"

#include <cmath>

namespace rehale::dose {

double flow_l_min(double resistance, double pressure_kpa) {
  return std::sqrt(pressure_kpa) / resistance;
}

}  // namespace rehale::dose
