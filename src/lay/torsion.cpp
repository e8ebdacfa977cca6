#include "lay/torsion.h"

#include <cmath>
#include <numbers>

namespace laywright {
namespace {

using std::numbers::pi;

// Of glass, from memory.
constexpr double glass_modulus_MPa = 72e3;
constexpr double glass_shear_modulus_MPa = 31e3;
// Glass .17, copper .34, polymers up to .4: the shear modulus moves by a tenth between them.
constexpr double usual_poisson = 0.25;
constexpr double usual_core_in_fiber = 0.5;  // 125 um in 245 um
constexpr double usual_strain = 6e-4;

constexpr double soft_slack_d = 0.5;

}  // namespace

double middle_radius_mm(const Plan& plan) {
  return 0.5 * (plan.spool().barrel_diameter_mm + 0.5 * plan.spool().barrel_taper_mm);
}

Torsion torsion_of(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  Torsion torsion;
  torsion.rolls = fiber.section == FiberSection::round && fiber.friction > 0.0 && std::isfinite(fiber.friction);

  torsion.modulus_assumed = !fiber.shear_modulus_MPa && !fiber.modulus_MPa;
  const double in_shear_per_tension = 0.5 / (1.0 + fiber.poisson.value_or(usual_poisson));
  double shear_MPa = glass_shear_modulus_MPa;
  double modulus_MPa = glass_modulus_MPa;
  if (fiber.shear_modulus_MPa) {
    shear_MPa = *fiber.shear_modulus_MPa;
    modulus_MPa = fiber.modulus_MPa.value_or(shear_MPa / in_shear_per_tension);
  } else if (fiber.modulus_MPa) {
    modulus_MPa = *fiber.modulus_MPa;
    shear_MPa = modulus_MPa * in_shear_per_tension;
  }

  const double d = fiber.diameter_mm;
  torsion.core_assumed = !fiber.core_diameter_mm;
  const double core = fiber.core_diameter_mm.value_or(torsion.modulus_assumed ? usual_core_in_fiber * d : d);
  // No pow: mathematical libraries differ in its last bit.
  torsion.stiffness_N = 4.0 * shear_MPa * (pi / 32.0 * core * core * core * core) / (d * d);

  const auto& tension = plan.wind().tension_N;
  torsion.tension_assumed = !tension || *tension <= 0.0;
  const double stretches_N = modulus_MPa * pi / 4.0 * core * core;
  torsion.tension_N = torsion.tension_assumed ? usual_strain * stretches_N : *tension;
  torsion.strain = torsion.tension_N / stretches_N;
  return torsion;
}

double slack_depth_mm(const Plan& plan, const Torsion& torsion) { return torsion.strain * middle_radius_mm(plan); }

bool is_soft(const Plan& plan, const Torsion& torsion) {
  return std::isfinite(plan.fiber().friction) && !torsion.assumed() &&
         slack_depth_mm(plan, torsion) >= soft_slack_d * plan.fiber().diameter_mm;
}

double critical_length_mm(double stiffness_over_tension, double diameter_mm, double radius_mm) {
  return pi * std::sqrt((1.0 + stiffness_over_tension) * diameter_mm * radius_mm);
}

double slip_length_mm(double stiffness_over_tension, double diameter_mm, double radius_mm, double friction) {
  return std::sqrt(stiffness_over_tension * diameter_mm * radius_mm / friction);
}

RollLengths roll_lengths(const Plan& plan, const Torsion& torsion) {
  const Fiber& fiber = plan.fiber();
  const double radius = middle_radius_mm(plan);
  const double k = torsion.over_tension();
  return {critical_length_mm(k, fiber.diameter_mm, radius),
          slip_length_mm(k, fiber.diameter_mm, radius, fiber.friction)};
}

}  // namespace laywright
