#include "advise/capacity.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include <fmt/format.h>

#include "advise/setting_text.h"
#include "measure/fiber_line.h"
#include "measure/measurements.h"

namespace laywright {
namespace {

using std::numbers::pi;

// Where a fiber first stands nearer to the rim than the clearance.
struct Touch {
  double length_mm, turns;
};
Touch first_touch(const Build& build, const FiberLine& line, double surface_mm) {
  const double centre = surface_mm - 0.5 * build.fiber_diameter_mm;
  const NodeStore& nodes = build.nodes;
  std::size_t k = 0;
  while (k < nodes.size() && nodes.r(k) <= centre) ++k;
  if (k >= nodes.size()) return {build.length_mm, build.turns};
  return {line.at(k), static_cast<double>(k) / build.stations_per_turn};
}

std::vector<CapacityRow> formulas(const Plan& plan, const WindingSpace& space) {
  const double d = plan.fiber().diameter_mm, pitch = plan.traverse().pitch_mm;
  std::vector<CapacityRow> rows{
      {"reel rule, square packing", square_length(space, d),
       "layers that nest into each other, whole turns and layers, the pitch, what happens at the flanges",
       "Quabbin technical brief on reel capacity; Handbook of Oceanographic Winch, Wire and Cable Technology, ch. "
       "12"},
      {"reel rule for rope", square_length(space, rope_oversize * d),
       "the same; takes the fiber as 6.4 % thicker, as tables of wire rope do for a rope's oversize",
       "rope reel capacity page of Trans-Pacific Hardware"},
      {"layers that rise by 0.95 d", length_at_rise(space, d, cable_rise_d * d),
       "whole turns and layers, the pitch, the flanges; the rise is that of turns that cross those below",
       "NEMA reel method page"},
      {"densest packing", hexagonal_length(space, d), "everything but the volume: no winding can hold more",
       "hexagonal packing, fill pi / sqrt(12)"},
  };
  if (pitch < std::sqrt(3.0) * d) {
    rows.push_back({"nested layers at the pitch", nested_length(space, d, pitch),
                    "crossings, where a turn climbs over those below; turns missing or piled at the flanges",
                    "geometry of circles in grooves"});
  }
  return rows;
}

}  // namespace

WindingSpace winding_space(const PlanDraft& draft) {
  const Spool& spool = draft.spool;
  WindingSpace space;
  space.barrel_mm = spool.barrel_diameter_mm + 0.5 * spool.barrel_taper_mm;
  space.depth_mm = 0.5 * (spool.flange_diameter_mm - space.barrel_mm) - draft.limits.rim_clearance_mm;
  space.width_mm = spool.inside_width_mm + space.depth_mm * std::tan(spool.flange_taper_rad);
  return space;
}

double length_at_rise(const WindingSpace& space, double d_mm, double rise_mm) {
  return pi * (space.depth_mm + space.barrel_mm) * space.depth_mm * space.width_mm / (d_mm * rise_mm);
}

double square_length(const WindingSpace& space, double d_mm) { return length_at_rise(space, d_mm, d_mm); }

double hexagonal_length(const WindingSpace& space, double d_mm) {
  return length_at_rise(space, d_mm, std::sqrt(3.0) / 2.0 * d_mm);
}

double nested_length(const WindingSpace& space, double d_mm, double pitch_mm) {
  if (space.width_mm < d_mm || space.depth_mm < d_mm) return 0.0;
  // A part of a millionth of a turn or layer is rounding.
  constexpr double rounding = 1e-6;
  const double turns = 1.0 + std::floor((space.width_mm - d_mm) / pitch_mm + rounding);
  const double rise = std::sqrt(d_mm * d_mm - 0.25 * pitch_mm * pitch_mm);
  const double layers = 1.0 + std::floor((space.depth_mm - d_mm) / rise + rounding);
  const double mean_diameter = space.barrel_mm + d_mm + (layers - 1.0) * rise;
  return layers * turns * std::hypot(pi * mean_diameter, pitch_mm);
}

Result<Capacity> capacity(const Plan& plan, const LaySettings& settings, Progress& progress) {
  Capacity result;
  result.space = winding_space(plan.draft());
  result.rim_clearance_mm = plan.limits().rim_clearance_mm;
  result.formulas = formulas(plan, result.space);

  const double surface_diameter = plan.spool().flange_diameter_mm - 2.0 * result.rim_clearance_mm;
  PlanDraft full = plan.draft();
  full.wind.length_mm.reset();
  full.wind.turns.reset();
  full.wind.diameter_mm = surface_diameter;
  const Result<Plan> sound = check(full);
  if (!sound.ok()) return sound.issues();
  const Result<Build> laid = lay(sound.value(), settings, progress);
  if (!laid.ok()) return laid.issues();
  const Build& build = laid.value();
  const Touch touch = first_touch(build, FiberLine(build), 0.5 * surface_diameter);
  result.first_touch_mm = touch.length_mm;
  result.first_touch_turns = touch.turns;
  result.on_average_mm = build.length_mm;
  result.on_average_turns = build.turns;
  result.layers = static_cast<int>(build.strokes.size());
  result.stopped_by_rim = build.stopped_by == StopReason::rim;
  const Measurements measurements = measure(sound.value(), build, progress);
  result.fill_factor = measurements.fill_factor;
  if (progress.cancelled()) return stopped();
  return result;
}

}  // namespace laywright
