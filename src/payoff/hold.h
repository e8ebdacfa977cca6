// What holds a fiber that is drawn off, in closed forms. Derivation and limits: MODEL.md in this folder.
//
// Lengths mm, angles rad, friction a finite coefficient. Multiples are of the tension with which the fiber was wound.
#pragma once

namespace laywright {

// A slit whose sides are parallel holds over a diameter, one that opens only as far as a soft coating gives way, as a share of
// the diameter (an assumption: coatings of fibers are softer than what they cover).
inline constexpr double coating_gives_d = 0.05;

// How far the fiber may be carried round past the place where it should leave: drawn no harder, it is pulled off steeper and
// steeper until it comes with a jerk (an assumption: 60 degrees, a sixth of a turn).
inline constexpr double carried_round_rad = 1.0471975511965976;

// Friction that is told by no number, `held`, counts as this (an assumption: the greatest said of coatings is 0.8).
inline constexpr double held_counts_as = 1.0;
[[nodiscard]] double payoff_friction(double plan_friction);

// Between two contacts whose normals lean `lean_rad` away from the radius, in the mean, a fiber jams where it is pressed in:
// when the wedge between them opens by no more than twice the angle of friction. The lean from which it does:
// 90 degrees - atan(friction).
[[nodiscard]] double jamming_lean_rad(double friction);

// Of the force that pressed it in, what it takes to draw it out again, both per length: (mu tan b - 1) / (mu tan b + 1), and 0
// where it does not jam. Precondition: 0 <= lean <= 90 degrees.
[[nodiscard]] double pull_out_share(double lean_rad, double friction);

// How far a jammed fiber is drawn before it is loose, mm: what the coating gives way to, over cos b, a diameter at most.
[[nodiscard]] double grip_mm(double lean_rad, double diameter_mm);

// What draws a fiber out of a slit: as a multiple of the tension, G / (T (1 - cos phi)) with G = q share grip, the work of
// drawing it out per length, and q = T (1 + turns above) / radius, the line load of itself and of what lay on it. `steepness` is
// 1 - cos phi, phi the angle by which the drawn fiber stands off the wound one.
struct Slit {
  double lean_rad = 0.0;
  double turns_above = 0.0;
  double radius_mm = 0.0;
};
[[nodiscard]] double slit_multiple(const Slit& slit, double diameter_mm, double friction, double steepness);

// What a bend by `angle_rad` around other turns does to the tension: e^(mu angle), the capstan equation.
[[nodiscard]] double bend_multiple(double angle_rad, double friction);

}  // namespace laywright
