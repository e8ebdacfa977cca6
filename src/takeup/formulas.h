// The closed forms of the take-up: what the spool, the clutch and the fiber do at one radius.
//
// Lengths mm, forces N, torques N mm, speeds mm/s and rpm, stresses MPa, angles rad. Each stands with its source.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

inline constexpr double standard_gravity_mm_per_s2 = 9806.65;  // exact, CGPM 1901

// rpm of a spool that takes up `length_per_turn_mm` of fiber a turn: on a plain barrel v / (2 pi r), the shop's
// 3.82 x (ft/min) / (diameter in inches). Source: kinematics; the rule in machine design tables on web tension.
[[nodiscard]] double spool_speed_rpm(double line_speed_mm_per_s, double length_per_turn_mm);

// Tension at radius r when it is `start_N` at radius `start_mm`. Constant torque: T = M / r. Taper k: the winding
// trade's T / T0 = 1 - k (1 - D0 / D), in which k = 0 is constant tension and k = 1 constant torque (common practice
// in web handling, from memory).
[[nodiscard]] double tension_at(const Takeup& takeup, double start_N, double start_mm, double radius_mm);

// Heat of a clutch that slips, W: torque x angle per second. Source: definition of power; .012 W per lbf in and rpm in
// a trade article on clutches and brakes (machinedesign.com, 2017).
[[nodiscard]] double clutch_heat_W(double torque_Nmm, double slip_rpm);

// Inertia of a ring of `density_kg_per_mm3` between two radii, kg m2: pi / 2 rho w (R^4 - r^4). Source: mechanics.
[[nodiscard]] double ring_inertia_kg_m2(double density_kg_per_mm3, double width_mm, double outer_mm,
                                        double inner_mm);

// Torque that brings an inertia from rest to a speed, or to rest, evenly in a time, N mm. Source: M = J dw / dt.
[[nodiscard]] double ramp_torque_Nmm(double inertia_kg_m2, double speed_rpm, double time_s);

// How many times the pull on one end of a wrapped line exceeds the hold that its other end needs: e^(mu phi).
// Source: the capstan equation (Euler, Eytelwein).
[[nodiscard]] double capstan_ratio(double friction, double turns);

// Stress in the round core that carries the load, MPa.
[[nodiscard]] double core_stress_MPa(double tension_N, double core_diameter_mm);

// Strain at the outer side of a round core whose centre line is bent to a radius: half the core over the radius.
// Source: beam theory.
[[nodiscard]] double bend_strain(double core_diameter_mm, double bend_radius_mm);

// Bending stiffness E I of a round core, N mm2.
[[nodiscard]] double bending_stiffness_Nmm2(double modulus_MPa, double core_diameter_mm);

// The pull below which fiber does not lie down on a spool of radius r: it must turn its own motion and, at the
// spool's underside, carry its own weight, and, where it is stiff, be bent onto the radius:
//   T = m v^2 + m g r + E I / (2 r^2)      m: mass per length
// Derived: balance of a hoop that is about to lift, and of an elastic strip that is about to peel off.
[[nodiscard]] double least_tension_N(double linear_mass_g_per_km, double line_speed_mm_per_s, double radius_mm,
                                     double stiffness_Nmm2);

// Friction that a bare barrel must have so that the fiber stays where it falls when the guide turns back at once:
// p / (pi L), the greatest lateral over normal curvature of the way that lags behind the guide, whose slope jumps by
// p / (pi r) over the free length L. Derived, with the law that fiber slips where geodesic over normal curvature
// exceeds friction (filament winding, DOI 10.1177/0892705706049561).
[[nodiscard]] double friction_at_reversal(double pitch_mm, double free_length_mm);

}  // namespace laywright
