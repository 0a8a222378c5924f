#include "core/dose/technique.h"

#include <array>
#include <cstddef>

namespace rehale::dose {

namespace {

constexpr std::array<std::string_view, k_devices> k_device_ids{
    "suspension-spray", "extrafine-spray", "chamber-spray", "soft-mist",
    "reservoir-powder", "lever-powder",    "cover-powder",  "capsule-powder"};

constexpr std::array<std::string_view, k_leans> k_lean_ids{
    "coarse-share",   "press-wait",   "early-offset", "hold-weak",    "not-shaken",
    "tilted",         "breathed-in",  "vents",        "loaded-twice", "cover-lung",
    "powder-release", "flow-outside", "adult-lung"};

// Mean flow and volume of the published good rows: facts/aerosol.md section 9.
struct GoodBreath {
  double flow_l_per_min, inspired_ml, press_s;
};
constexpr std::array<GoodBreath, k_devices> k_good{{
    {30, 2500, .3},  // row 1
    {30, 2500, .3},  // row 6
    {30, 2500, -1},  // row 5: the cloud waits in the chamber
    {30, 2500, .2},  // row 7
    {58, 2000, 0},   // row 8
    {60, 2000, 0},   // row 9
    {60, 2000, 0},   // row 10
    {35, 1800, 0},   // row 11
}};

}  // namespace

std::optional<Device> find_device(std::string_view id) {
  for (std::size_t i = 0; i < k_device_ids.size(); ++i) {
    if (k_device_ids[i] == id) return static_cast<Device>(i);
  }
  return std::nullopt;
}

Technique good_technique(Device device) {
  const GoodBreath& good = k_good[static_cast<std::size_t>(device)];
  Technique technique;
  technique.device = device;
  technique.flow_l_per_min = good.flow_l_per_min;
  technique.inspired_ml = good.inspired_ml;
  technique.press_s = good.press_s;
  return technique;
}

std::string_view id_of(Lean lean) { return k_lean_ids[static_cast<std::size_t>(lean)]; }

bool is_assumption(Lean lean) {
  return lean == Lean::breathed_in || lean == Lean::vents || lean == Lean::loaded_twice ||
         lean == Lean::cover_lung || lean == Lean::powder_release || lean == Lean::early_offset;
}

}  // namespace rehale::dose
