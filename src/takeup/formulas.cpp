#include "takeup/formulas.h"

#include <cmath>
#include <numbers>

namespace laywright {
namespace {

constexpr double pi = std::numbers::pi;

// rad/s of one rpm.
constexpr double rad_per_s = 2.0 * pi / 60.0;

}  // namespace

double spool_speed_rpm(double line_speed_mm_per_s, double length_per_turn_mm) {
  return 60.0 * line_speed_mm_per_s / length_per_turn_mm;
}

double tension_at(const Takeup& takeup, double start_N, double start_mm, double radius_mm) {
  const double share = start_mm / radius_mm;
  switch (takeup.control) {
    case TensionControl::constant_torque: return start_N * share;
    case TensionControl::constant_tension: return start_N;
    case TensionControl::taper: return start_N * (1.0 - takeup.taper * (1.0 - share));
  }
  return start_N;
}

double clutch_heat_W(double torque_Nmm, double slip_rpm) { return 1e-3 * torque_Nmm * slip_rpm * rad_per_s; }

double ring_inertia_kg_m2(double density_kg_per_mm3, double width_mm, double outer_mm, double inner_mm) {
  return 1e-6 * 0.5 * pi * density_kg_per_mm3 * width_mm * (std::pow(outer_mm, 4.0) - std::pow(inner_mm, 4.0));
}

double ramp_torque_Nmm(double inertia_kg_m2, double speed_rpm, double time_s) {
  return 1e3 * inertia_kg_m2 * speed_rpm * rad_per_s / time_s;
}

double capstan_ratio(double friction, double turns) { return std::exp(friction * 2.0 * pi * turns); }

double core_stress_MPa(double tension_N, double core_diameter_mm) {
  return tension_N / (0.25 * pi * core_diameter_mm * core_diameter_mm);
}

double bend_strain(double core_diameter_mm, double bend_radius_mm) {
  return 0.5 * core_diameter_mm / bend_radius_mm;
}

double bending_stiffness_Nmm2(double modulus_MPa, double core_diameter_mm) {
  return modulus_MPa * pi / 64.0 * std::pow(core_diameter_mm, 4.0);
}

double least_tension_N(double linear_mass_g_per_km, double line_speed_mm_per_s, double radius_mm,
                       double stiffness_Nmm2) {
  // g/km is 1e-9 kg/mm; kg mm/s2 is 1e-3 N.
  const double mass = 1e-12 * linear_mass_g_per_km;
  return mass * (line_speed_mm_per_s * line_speed_mm_per_s + standard_gravity_mm_per_s2 * radius_mm) +
         0.5 * stiffness_Nmm2 / (radius_mm * radius_mm);
}

double friction_at_reversal(double pitch_mm, double free_length_mm) { return pitch_mm / (pi * free_length_mm); }

}  // namespace laywright
