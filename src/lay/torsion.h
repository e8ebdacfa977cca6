// How stiff a round fiber is against the twist that rolling puts into it, from what the plan says of it. Formulas,
// derivation and limits: MODEL.md, "A round fiber rolls".
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

struct Torsion {
  // False: a flat fiber, one that is held where it lands, or one without friction. It does not roll.
  bool rolls = false;
  double stiffness_N = 0.0;  // K = 4 G J / d^2: what twist adds to the tension of what is rolled
  double tension_N = 0.0;
  double strain = 0.0;  // that the tension gives the core: T / (E A)
  // What the plan does not say, and was taken as a coated glass fiber at its usual pull has it.
  bool modulus_assumed = false;
  bool core_assumed = false;
  bool tension_assumed = false;

  [[nodiscard]] double over_tension() const { return stiffness_N / tension_N; }
  [[nodiscard]] bool assumed() const { return modulus_assumed || core_assumed || tension_assumed; }
};

// G is the plan's shear modulus, else its modulus over 2 (1 + nu), nu its Poisson's ratio or 0.25; without either
// that of glass, 31 GPa (72 GPa in tension; both from memory). J = pi c^4 / 32 of the core c; without a core, of the
// whole fiber where a modulus is given, else of half its diameter, as in a coated optical fiber. Without a tension,
// one that strains the core by 0.06 % (0.5 N on 125 um of glass: 0.057 %).
[[nodiscard]] Torsion torsion_of(const Plan& plan);

// Of the barrel, at its middle.
[[nodiscard]] double middle_radius_mm(const Plan& plan);

// How far a turn may sink before it is slack, mm: R T / (E A) at the middle of the barrel (derived).
[[nodiscard]] double slack_depth_mm(const Plan& plan, const Torsion& torsion);

// Soft: a laid turn may sink by half a diameter, into another groove, and still be taut; so it may give way (slump.h). Only where
// the plan says how stiff the fiber is, and not where it is held as it lands. (Glass at its usual pull: a sixth of a diameter;
// metal less.)
[[nodiscard]] bool is_soft(const Plan& plan, const Torsion& torsion);

// Longest stretch, held at both ends, that can stay on top of a single turn, mm: pi sqrt((1 + k) d R) for k = K / T
// (derived: beyond it, falling off a cap of radius d gives more than twist and string take up).
[[nodiscard]] double critical_length_mm(double stiffness_over_tension, double diameter_mm, double radius_mm);

// Below about this length a fiber slides before it rolls, mm: sqrt(k d R / mu) (derived: the twist that a radian of
// rolling needs is then more than friction passes on).
[[nodiscard]] double slip_length_mm(double stiffness_over_tension, double diameter_mm, double radius_mm,
                                    double friction);

// The same for a plan: at the middle of its barrel, with its own fiber.
struct RollLengths {
  double critical_mm = 0.0, slip_mm = 0.0;
};
[[nodiscard]] RollLengths roll_lengths(const Plan& plan, const Torsion& torsion);

}  // namespace laywright
