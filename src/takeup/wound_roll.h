// The pressure that a winding builds up in itself: the linear wound-roll model.
//
// Each layer is wound on as a thin ring at its own stress and presses what lies below, an elastic ring that is g^2
// times as stiff around as it is radially, on a core. The pressure increment dP obeys
//   r^2 P'' + 3 r P' - (g^2 - 1) P = 0      g^2 = Et / Er
// with r P' = (Et / Ec - 1 + nu) P at the core (Hakiel, TAPPI Journal, 1987; from memory). Its solution for one layer,
// integrated over all later ones, in core radii:
//   P(r) = int_r^R (S(s) / s) (r/s)^(g-1) (1 + k r^-2g) / (1 + k s^-2g) ds
// and, by balance, the hoop stress -(P + r P'). Derived from the equation; it holds for any S(s).
#pragma once

#include <functional>

namespace laywright {

struct WoundRoll {
  double stiffness_ratio = 1.0;  // g, at least 1: root of hoop over radial stiffness
  // k = (g - Et/Ec - nu) / (g + Et/Ec + nu), -1 to 1: 1 on a core that does not yield (nu = 0), -1 on none at all.
  double core_support = 1.0;
  double outer_radius = 2.0;                   // in core radii, more than 1
  std::function<double(double)> wound_stress;  // S at a radius (in core radii), MPa
};

// k of a core. `hoop_over_core`: Et / Ec, hoop stiffness of the winding over the core's (0: rigid).
[[nodiscard]] double core_support(double stiffness_ratio, double hoop_over_core, double poisson);

// Radial pressure and hoop stress (tension positive) at a radius from 1 to outer_radius (in core radii), MPa. Without
// any core (k = -1) the hoop stress has no bound at radius 1.
[[nodiscard]] double roll_pressure(const WoundRoll& roll, double radius);
[[nodiscard]] double roll_hoop_stress(const WoundRoll& roll, double radius);

}  // namespace laywright
