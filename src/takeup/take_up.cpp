#include <algorithm>

#include "takeup/formulas.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

void find_bend(const MachineWind& wind, TakeupRun& run) {
  const Fiber& fiber = wind.plan.fiber();
  if (!fiber.core_diameter_mm) return;
  run.bend_strain = bend_strain(*fiber.core_diameter_mm, wind.line.radius_mm(0));
  if (fiber.modulus_MPa) run.bend_stress_MPa = *run.bend_strain * *fiber.modulus_MPa;
}

bool is_wound(const Build& build, const Measurements& measurements) {
  return build.nodes.size() > 0 && build.length_mm > 0.0 && measurements.layers.size() == build.strokes.size();
}

void find_pull_and_speed(const MachineWind& wind, TakeupRun& run) {
  run.curves = make_curves(wind);
  run.hold = find_hold(wind, run.curves);
  const std::vector<double>& rpm = run.curves.spool_rpm;
  if (!rpm.empty()) run.least_speed_ceiling_rpm = *std::max_element(rpm.begin(), rpm.end());
}

}  // namespace

std::vector<MissingKey> find_missing(const Plan& plan) {
  std::vector<MissingKey> missing;
  const auto need = [&](bool given, const char* key, const char* gives) {
    if (!given) missing.push_back({key, gives});
  };
  const Fiber& fiber = plan.fiber();
  const auto& takeup = plan.takeup();
  need(plan.wind().line_speed_mm_per_s.has_value(), "wind.line_speed", "speeds, times, heat in the clutch");
  need(plan.wind().tension_N.has_value(), "wind.tension", "tension, torque, current, pressure");
  need(takeup.has_value(), "takeup.control", "how the tension goes from empty to full");
  need(measured_clutch(plan) != nullptr || (takeup && takeup->torque_at_full_current_Nmm && takeup->full_current_A),
       "takeup.torque_at_full_current and takeup.full_current", "the clutch current");
  need(takeup && takeup->speed_ceiling_rpm, "takeup.speed_ceiling", "slip and heat in the clutch");
  need(fiber.linear_mass_g_per_km.has_value(), "fiber.linear_mass", "mass, inertia, the least pull that holds");
  need(plan.spool().mass_kg.has_value(), "spool.mass", "the spool's share of the inertia");
  need(fiber.core_diameter_mm.has_value(), "fiber.core_diameter", "stress and bending in the fiber");
  need(fiber.modulus_MPa.has_value(), "fiber.modulus", "strain in the fiber");
  need(fiber.max_tension_N.has_value(), "fiber.max_tension", "the share of what the fiber bears");
  return missing;
}

TakeupRun pull_and_speed(const Plan& plan, const Build& build, const Measurements& measurements) {
  TakeupRun run;
  if (!is_wound(build, measurements)) return run;
  const TurnLine line(build);
  find_pull_and_speed({plan, build, measurements, line}, run);
  return run;
}

TakeupRun take_up(const Plan& plan, const Build& build, const Measurements& measurements, Progress& progress) {
  TakeupRun run;
  run.missing = find_missing(plan);
  if (!is_wound(build, measurements)) return run;
  const TurnLine line(build);
  const MachineWind wind{plan, build, measurements, line};
  find_pull_and_speed(wind, run);
  progress.report(0.3);
  run.checkpoints = make_checkpoints(wind);
  run.steps = place_steps(wind);
  run.counter = set_counter(wind);
  if (!run.curves.time_s.empty()) run.time_s = run.curves.time_s.back();
  run.fleet = find_fleet_angle(wind, progress);
  progress.report(0.8);
  if (progress.cancelled()) return run;
  run.reversal = find_reversal(wind, run.curves);
  find_bend(wind, run);
  run.pressure = estimate_pressure(wind);
  run.warnings = find_warnings(wind, run);
  run.payoff = pay_off(plan, build, {}, progress);
  progress.report(1.0);
  return run;
}

}  // namespace laywright
