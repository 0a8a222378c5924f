#include <iterator>

#include "core/catalog/read_parts.h"

namespace rehale::catalog {
namespace {

Part read_part(const Reader& step) {
  const auto name = step.id_or_none("part");
  if (name == "breath") return Part::breath;
  if (!name.empty() && name != "hands")
    step.at("part").finding("unknown-part", {"use hands or breath"});
  return Part::hands;
}

DoseRole read_role(const Reader& step) {
  constexpr const char* k_roles[] = {"none", "shake",       "press",       "inhale", "inhale-weak",
                                     "hold", "cover-vents", "clear-vents", "into",   "tilt"};
  const auto name = step.id_or_none("role");
  for (std::size_t n = 0; n < std::size(k_roles); ++n) {
    if (name == k_roles[n]) return static_cast<DoseRole>(n);
  }
  if (!name.empty())
    step.at("role").finding("unknown-role", {"see DoseRole in core/catalog/model.h"});
  return DoseRole::none;
}

Measure read_measure(const Reader& place) {
  const auto name = place.id("measure");
  if (name == "after-start-of") return Measure::after_start_of;
  if (name == "after-end-of") return Measure::after_end_of;
  if (name == "count-in") return Measure::count_in;
  if (!name.empty() && name != "lasts") {
    place.at("measure").finding("unknown-measure",
                                {"use lasts, after-start-of, after-end-of or count-in"});
  }
  return Measure::lasts;
}

RunStep read_step(const Reader& place) {
  place.allow_only({"action", "part", "timed", "ends", "cut_short", "role", "technique", "betrays",
                    "from", "until"});
  RunStep step;
  step.id = place.id("action");
  step.part = read_part(place);
  step.timed = place.flag_or_no("timed");
  step.ends = place.id_or_none("ends");
  step.cut_short = place.id_or_none("cut_short");
  step.role = read_role(place);
  step.technique = place.id_or_none("technique");
  step.betrays = place.id_or_none("betrays");
  step.from = place.id_or_none("from");
  step.until = place.id_or_none("until");
  return step;
}

TimedCriterion read_timed(const Reader& place) {
  place.allow_only({"criterion", "steps", "measure", "of", "tolerance", "sources", "status"});
  TimedCriterion timed;
  timed.criterion = place.text("criterion");  // '_' may be in it
  timed.steps = place.ids("steps");
  timed.measure = read_measure(place);
  timed.of = place.ids_or_none("of");
  timed.tolerance = place.number("tolerance");
  timed.from = read_provenance(place);
  return timed;
}

}  // namespace

void read_run_through(const Reader& place, RunThrough& run_through) {
  place.allow_only({"steps", "once", "twice", "timed"});
  for (const auto& step : place.list("steps")) run_through.steps.push_back(read_step(step));
  run_through.once = place.ids("once");
  run_through.twice = place.ids_or_none("twice");
  for (const auto& timed : place.list("timed")) run_through.timed.push_back(read_timed(timed));
}

}  // namespace rehale::catalog
