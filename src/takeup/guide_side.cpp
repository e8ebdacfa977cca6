// What guide, free span and clutch ask of the wind: fleet angle, reversal, limits of the pull.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"
#include "lay/guide.h"
#include "takeup/formulas.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

// The guide moves with the spool's angle; node k lies at k stations.
void advance_one_station(Guide& guide, double station_rad) {
  for (double left = station_rad; left > 0.0;) left -= guide.advance(left).angle;
}

}  // namespace

std::optional<FleetAngle> find_fleet_angle(const MachineWind& wind, Progress& progress) {
  const double free_length = wind.plan.traverse().free_length_mm;
  if (free_length <= 0.0) return std::nullopt;
  const NodeStore& nodes = wind.build.nodes;
  const double station = 2.0 * std::numbers::pi / wind.build.stations_per_turn;
  Guide guide(wind.plan, wind.build.seed);
  double most = 0.0;
  std::size_t at = 0;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    const double aside = std::abs(guide.x() - nodes.x(k));
    if (aside > most) {
      most = aside;
      at = k;
    }
    advance_one_station(guide, station);
    if (k % 100'000 == 0 && progress.cancelled()) return std::nullopt;
  }
  FleetAngle fleet;
  fleet.steady_deg =
      deg_per_rad * std::atan(wind.plan.traverse().pitch_mm / (2.0 * std::numbers::pi * wind.line.radius_mm(0)));
  fleet.greatest_deg = deg_per_rad * std::atan(most / free_length);
  fleet.at_turn = static_cast<double>(at) / wind.build.stations_per_turn;
  return fleet;
}

std::optional<GuideReversal> find_reversal(const MachineWind& wind, const MachineCurves& curves) {
  if (curves.spool_rpm.empty()) return std::nullopt;
  const Traverse& traverse = wind.plan.traverse();
  const double turns_per_s = greatest(curves.spool_rpm) / 60.0;
  GuideReversal reversal;
  reversal.speed_mm_per_s = greatest(curves.traverse_mm_per_s);
  // A stepped guide goes its pitch within the step angle.
  if (traverse.motion == Motion::stepped)
    reversal.speed_mm_per_s *= 2.0 * std::numbers::pi / traverse.step_angle_rad;
  if (traverse.reversal.kind != ReversalKind::instant && traverse.reversal.turns > 0.0) {
    reversal.time_s = traverse.reversal.turns / turns_per_s;
    if (traverse.reversal.kind == ReversalKind::ramp) {
      reversal.acceleration_mm_per_s2 = 2.0 * reversal.speed_mm_per_s / *reversal.time_s;
    }
  }
  if (traverse.free_length_mm > 0.0) {
    // After a reversal the lay point turns back only when the length L ln 2 has been laid (derived from the lag).
    reversal.hidden_time_s = traverse.free_length_mm * std::numbers::ln2 / *wind.plan.wind().line_speed_mm_per_s;
  }
  return reversal;
}

namespace {

void find_least_tension(const MachineWind& wind, HoldLimits& hold) {
  const Fiber& fiber = wind.plan.fiber();
  const std::optional<double> speed = wind.plan.wind().line_speed_mm_per_s;
  if (!fiber.linear_mass_g_per_km || !speed) return;
  const double stiffness = fiber.modulus_MPa && fiber.core_diameter_mm
                               ? bending_stiffness_Nmm2(*fiber.modulus_MPa, *fiber.core_diameter_mm)
                               : 0.0;
  double least = 0.0;
  for (std::size_t turn = 0; turn < wind.line.turns(); ++turn) {
    const double radius = wind.line.radius_mm(turn);
    least = std::max(least, least_tension_N(*fiber.linear_mass_g_per_km, *speed, radius, stiffness));
  }
  hold.least_tension_N = least;
}

// While the spool is brought up, inertia takes from the pull; while it runs down against the fiber, it adds to it.
void find_ramps(const MachineWind& wind, const MachineCurves& curves, HoldLimits& hold) {
  if (curves.ramp_torque_Nmm.empty() || curves.tension_N.empty()) return;
  double start = 0.0, stop = 0.0;
  const std::optional<double> most = wind.plan.fiber().max_tension_N;
  for (std::size_t i = 0; i < curves.length_mm.size(); ++i) {
    const double pull_seconds = curves.ramp_torque_Nmm[i] * stated_ramp_s / curves.radius_mm[i];
    start = std::max(start, pull_seconds / curves.tension_N[i]);
    if (most && *most > curves.tension_N[i]) stop = std::max(stop, pull_seconds / (*most - curves.tension_N[i]));
  }
  hold.shortest_start_s = start;
  if (most) hold.shortest_stop_s = stop;
}

}  // namespace

HoldLimits find_hold(const MachineWind& wind, const MachineCurves& curves) {
  HoldLimits hold;
  const double friction = wind.plan.fiber().friction;
  if (std::isfinite(friction)) hold.capstan_ratio_per_turn = capstan_ratio(friction, 1.0);
  const Traverse& traverse = wind.plan.traverse();
  if (traverse.free_length_mm > 0.0) {
    hold.friction_at_reversal = friction_at_reversal(traverse.pitch_mm, traverse.free_length_mm);
  }
  find_least_tension(wind, hold);
  find_ramps(wind, curves, hold);
  return hold;
}

}  // namespace laywright
