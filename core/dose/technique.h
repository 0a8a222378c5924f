// What a person did with one puff, as numbers, and where the medicine went: the values that go into
// and come out of the dose model (model.h). Units stand in the names.
// Must not know: content, texts, screens, clocks. Everything here is a teaching estimate.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace rehale::dose {

// Kinds of device the model has published data for.
enum class Device : std::uint8_t {
  suspension_spray,  // pressed, must be shaken                 ("suspension-spray")
  extrafine_spray,   // pressed, a solution of very fine drops  ("extrafine-spray")
  chamber_spray,     // the first one with a valved chamber     ("chamber-spray")
  soft_mist,         // turned, then pressed                    ("soft-mist")
  reservoir_powder,  // twisted                                 ("reservoir-powder")
  lever_powder,      // blisters moved on by a lever            ("lever-powder")
  cover_powder,      // loaded by opening the cover             ("cover-powder")
  capsule_powder,    // high resistance, a capsule a dose       ("capsule-powder")
};
inline constexpr int k_devices = 8;

// The device by the word beside it above; nothing when there is none.
[[nodiscard]] std::optional<Device> find_device(std::string_view id);

// Pressed by hand (or thumb) at a moment of the person's choice; else the breath draws the powder.
[[nodiscard]] constexpr bool is_pressed(Device device) { return device <= Device::soft_mist; }

// How the flow runs over one breath in. Its mean is what counts; half_sine has its peak at
// pi / 2 times the mean (an untrained breath), constant is what the published rows were fitted to.
enum class FlowShape : std::uint8_t { constant, half_sine };

// Limits of each number: outside them estimate() gives an error, inside always a finite result.
struct Range {
  double low, high;
  [[nodiscard]] constexpr bool holds(double x) const { return x >= low && x <= high; }
  [[nodiscard]] constexpr double clamp(double x) const {
    return x > low ? (x < high ? x : high) : low;  // NaN -> low
  }
};
inline constexpr Range k_flow_l_per_min{5, 160};
inline constexpr Range k_inspired_ml{200, 6000};
inline constexpr Range k_press_s{-60, 60};
inline constexpr Range k_hold_s{0, 60};
inline constexpr Range k_vents_covered{0, .95};
inline constexpr Range k_frc_ml{800, 8000};

// One puff. The values it starts with are those of a calm, well-taken one with a spray; use
// good_technique(device) for another device.
struct Technique {
  Device device = Device::suspension_spray;
  FlowShape shape = FlowShape::constant;
  double flow_l_per_min = 30;  // mean of the breath in, while nothing is covered
  double inspired_ml = 2500;   // drawn in by that breath
  // When the press came, in s after the breath began; below 0: before it. Pressed devices only.
  double press_s = .3;
  double hold_s = 10;                 // breath held after the breath in
  double exhale_l_per_min = 30;       // the breath out that follows
  double vents_covered = 0;           // share of the air inlets that fingers or lips cover
  bool shaken = true;                 // matters for suspensions only
  bool breathed_into_device = false;  // powders only: an assumption, no published number
  bool tilted = false;                // powder tipped when it was drawn in
  bool loaded_twice = false;          // two doses used up, one of them lost
  bool released = true;  // false: never pressed, or never loaded: all of it stays in the device
  double frc_ml = 3301;  // air left after a quiet breath out; reference man, ICRP 66
  friend bool operator==(const Technique&, const Technique&) = default;
};

// The same device used as its published good rows were: slow for sprays, firm for powders.
[[nodiscard]] Technique good_technique(Device device);

// A breath of this volume taken in this time; both above 0. Clamped to the range of the model.
[[nodiscard]] constexpr double mean_flow_l_per_min(double inspired_ml, double breath_s) {
  return k_flow_l_per_min.clamp(breath_s > 0 ? inspired_ml * .06 / breath_s
                                             : k_flow_l_per_min.high);
}

// Where it went, as shares of the medicine used up: they add to 1 within 1e-9.
struct Fractions {
  double device = 0;        // left in the device (and in a dose that was lost)
  double mouth_throat = 0;  // landed there
  double conducting = 0;    // airways down to the small ones
  double alveolar = 0;      // deep lung
  double exhaled = 0;       // breathed out, or lost to the room
  [[nodiscard]] constexpr double lung() const { return conducting + alveolar; }
};

struct Band {
  double low = 0, likely = 0, high = 0;
};

// What a result leans on. Shown with it; `assumption` ones have no publication behind their number.
enum class Lean : std::uint8_t {
  coarse_share,  // mouth dose is a constant fitted per device, not physics; people differ most here
  press_wait,    // pressed early: how long a cloud waits was fitted to one study
  early_offset,  // extrafine: how early "early" was is not stated in the study
  hold_weak,     // older studies claim more for the hold than the model gives
  not_shaken,    // measured on a bench, not in people
  tilted,        // measured on a bench, not in people
  breathed_in,   // assumption: blowing into a powder, no number found
  vents,         // assumption: covered inlets, physics only, no number found
  loaded_twice,  // assumption: the first dose is lost whole
  cover_lung,    // assumption: no lung value found for cover-loaded powders
  powder_release,  // assumption: how release grows with the pull, for this device
  flow_outside,    // flow beyond what the mouth curves were measured at (7 to 90 L/min)
  adult_lung,      // lungs of a healthy adult man
};
inline constexpr int k_leans = 13;

[[nodiscard]] std::string_view id_of(Lean lean);  // "coarse-share": stable, for texts
[[nodiscard]] bool is_assumption(Lean lean);

// A set of Lean, without a list to allocate.
struct Leans {
  std::uint32_t bits = 0;
  [[nodiscard]] constexpr bool has(Lean lean) const {
    return (bits >> static_cast<unsigned>(lean) & 1U) != 0;
  }
  constexpr void add(Lean lean) { bits |= 1U << static_cast<unsigned>(lean); }
};

// What estimate() gives.
struct Outcome {
  Fractions likely;
  Band lung;  // share that reached the lungs; likely == likely.lung()
  Leans leans;
  int doses_used = 1;  // 2 after loading twice
  // The lung share by each of the four mouth-throat curves (mouth_throat.h, the likely one first),
  // and with the shortest and longest wait of a cloud that was pressed too early.
  std::array<double, 4> lung_by_curve{};
  std::array<double, 2> lung_by_wait{};
};

}  // namespace rehale::dose
