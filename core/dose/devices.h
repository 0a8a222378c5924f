// What is known of each kind of device, as numbers: facts/aerosol.md section 9.
// Marks behind each: C calibrated to the in-vivo row named, D data, M memory, A assumption.
// Must not know: people, breaths.
#pragma once

#include <array>
#include <cstddef>

#include "core/dose/technique.h"

namespace rehale::dose {

struct Parameters {
  double kept = 0;  // pressed: share the device keeps
  double most = 0;  // powder: largest share that leaves it, and the pressure scale of that
  double most_kpa = 1;
  double fine = 0;      // share of what leaves that is fine enough for the lungs (largest, powder)
  double fine_kpa = 1;  // powder: pressure scale of the fine share
  double resistance = 0;  // kPa^0.5 min/L
  double mmad_um = 1, gsd = 2;
  double plume_s = .3;
  double plume_from_s = 0;   // powder: when it starts to leave, after the breath began
  double people_spread = 0;  // half of the in-vivo band of the lung dose over its middle
};

inline constexpr std::array<Parameters, k_devices> k_parameters{{
    // suspension spray: kept D E1; fine C E2 (22.8 % lung); size M; plume D; band 15-30 % (E2, E3)
    {.kept = .10,
     .fine = 1 - .686,
     .mmad_um = 2.8,
     .gsd = 1.8,
     .plume_s = .20,
     .people_spread = .33},
    // extrafine: shares are of the ex-actuator dose; fine D E7; an effective size C E6; 52-65 %
    {.kept = 0, .fine = 1 - .28, .mmad_um = 1.6, .gsd = 1.6, .plume_s = .25, .people_spread = .11},
    // with a valved chamber: kept D E5; fine C E5 (20.9 %); size M; 16-26 %
    {.kept = .558,
     .fine = 1 - .420,
     .mmad_um = 2.5,
     .gsd = 1.8,
     .plume_s = .20,
     .people_spread = .24},
    // soft mist: kept D E12; fine C E12 (39.2 %); size M; plume D; 35-55 %
    {.kept = .219,
     .fine = 1 - .368,
     .mmad_um = 3.0,
     .gsd = 1.8,
     .plume_s = 1.5,
     .people_spread = .26},
    // reservoir powder: release M, A; fine C E18 at 58 (27.7 %) and 36 L/min; 18-38 %
    {.most = .80,
     .most_kpa = .5,
     .fine = .709,
     .fine_kpa = 3.5,
     .resistance = .035,
     .mmad_um = 2.5,
     .gsd = 1.8,
     .plume_from_s = .05,
     .people_spread = .36},
    // lever powder: release M, A; fine C E22 (15 %); its pressure scale A; 10-20 %
    {.most = .90,
     .most_kpa = .25,
     .fine = .258,
     .fine_kpa = .35,
     .resistance = .026,
     .mmad_um = 3.2,
     .gsd = 1.8,
     .plume_from_s = .05,
     .people_spread = .33},
    // cover-loaded powder: fine set to a lung share of 20 %, A: no in-vivo value found; spread A
    {.most = .92,
     .most_kpa = .25,
     .fine = .336,
     .fine_kpa = .35,
     .resistance = .027,
     .mmad_um = 3.2,
     .gsd = 1.8,
     .plume_from_s = .05,
     .people_spread = .50},
    // high-resistance capsule: most D E21; fine C E21 (19 %); its pressure scale C CLA3; 14-24 %
    {.most = .451,
     .most_kpa = .4,
     .fine = .747,
     .fine_kpa = 2.4,
     .resistance = .051,
     .mmad_um = 3.0,
     .gsd = 1.8,
     .plume_from_s = .05,
     .people_spread = .26},
}};

[[nodiscard]] constexpr const Parameters& parameters(Device device) {
  return k_parameters[static_cast<std::size_t>(device)];
}

// Habits, as factors on what leaves the device and on its fine share.
inline constexpr double k_unshaken_out = 1 - .255;            // D E24, bench
inline constexpr double k_unshaken_fine = (1 - .357) / .745;  // D E24, bench
inline constexpr double k_tilted_out = .80;                   // D E25, bench, blister kinds only
inline constexpr double k_blown_out = .80;                    // A: no number found
inline constexpr double k_blown_fine = .70;                   // A: no number found
// Seconds a cloud stays airborne before the breath: C E4 (lung 8.7 % after 1 s); the ends are what
// E4's 2 SEM (5.1 to 12.3 %) allow.
inline constexpr double k_wait_s = 1;
inline constexpr double k_wait_shortest_s = .67;
inline constexpr double k_wait_longest_s = 1.6;
inline constexpr double k_chamber_sip_ml =
    300;  // the chamber is emptied by the first of the breath

}  // namespace rehale::dose
