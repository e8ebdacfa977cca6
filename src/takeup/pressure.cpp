#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/layer_setting.h"
#include "takeup/formulas.h"
#include "takeup/parts.h"
#include "takeup/wound_roll.h"

namespace laywright {
namespace {

constexpr std::size_t places = 41;
constexpr double stiff_ratio = 1.0, soft_ratio = 10.0;

double tension_in(const MachineWind& wind, double radius_mm) {
  return planned_tension(wind, radius_mm).value_or(*wind.plan.wind().tension_N);
}

PressureEstimate::Profile profile_of(WoundRoll roll, double ratio, double barrel_mm,
                                     const std::vector<double>& radius_mm) {
  roll.stiffness_ratio = ratio;
  roll.core_support = core_support(ratio, 0.0, 0.0);
  PressureEstimate::Profile profile;
  profile.stiffness_ratio = ratio;
  for (const double radius : radius_mm) {
    profile.pressure_MPa.push_back(roll_pressure(roll, radius / barrel_mm));
    profile.hoop_MPa.push_back(roll_hoop_stress(roll, radius / barrel_mm));
  }
  profile.barrel_MPa = profile.pressure_MPa.front();
  profile.least_hoop_MPa = *std::min_element(profile.hoop_MPa.begin(), profile.hoop_MPa.end());
  for (std::size_t i = 1; i < radius_mm.size(); ++i) {
    const double ring = std::numbers::pi * (radius_mm[i] * radius_mm[i] - radius_mm[i - 1] * radius_mm[i - 1]);
    profile.flange_force_N += 0.5 * (profile.pressure_MPa[i] + profile.pressure_MPa[i - 1]) * ring;
  }
  return profile;
}

}  // namespace

std::optional<PressureEstimate> estimate_pressure(const MachineWind& wind) {
  const Plan& plan = wind.plan;
  const Spool& spool = plan.spool();
  const SurfaceProfile& surface = wind.measurements.surface;
  if (!plan.wind().tension_N || surface.mean_mm.empty() || wind.measurements.fill_factor <= 0.0) return std::nullopt;

  const double barrel = 0.5 * spool.barrel_diameter_mm + 0.25 * spool.barrel_taper_mm;
  double outer = 0.0;
  for (const double radius : surface.mean_mm) outer += radius / static_cast<double>(surface.mean_mm.size());
  if (outer <= barrel) return std::nullopt;

  // A unit of the winding's section holds fiber of the share `fill`, each of which pulls with the tension.
  const double d = wind.build.fiber_diameter_mm;
  const double per_mm2 = wind.measurements.fill_factor / (0.25 * std::numbers::pi * d * d);
  WoundRoll roll;
  roll.outer_radius = outer / barrel;
  roll.wound_stress = [&](double radius) { return per_mm2 * tension_in(wind, radius * barrel + 0.5 * d); };

  PressureEstimate estimate;
  estimate.tension_assumed_constant = !plan.takeup();
  estimate.wound_stress_MPa = roll.wound_stress(1.0);
  estimate.one_layer_MPa = tension_in(wind, barrel + 0.5 * d) / (barrel * traverse_in_layer(plan, 1).pitch_mm);
  for (std::size_t i = 0; i < places; ++i) {
    estimate.radius_mm.push_back(barrel + (outer - barrel) * static_cast<double>(i) / (places - 1));
  }
  estimate.stiff = profile_of(roll, stiff_ratio, barrel, estimate.radius_mm);
  estimate.soft = profile_of(roll, soft_ratio, barrel, estimate.radius_mm);
  return estimate;
}

}  // namespace laywright
