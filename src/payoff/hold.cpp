#include "payoff/hold.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {

double payoff_friction(double plan_friction) {
  return std::isfinite(plan_friction) ? plan_friction : held_counts_as;
}

double jamming_lean_rad(double friction) { return 0.5 * std::numbers::pi - std::atan(friction); }

double pull_out_share(double lean_rad, double friction) {
  if (lean_rad < jamming_lean_rad(friction)) return 0.0;
  // Divided by tan b, which grows without end.
  const double flat = std::max(0.0, std::cos(lean_rad)) / std::sin(lean_rad);
  return (friction - flat) / (friction + flat);
}

double grip_mm(double lean_rad, double diameter_mm) {
  const double flat = std::max(std::cos(lean_rad), coating_gives_d);
  return diameter_mm * coating_gives_d / flat;
}

double slit_multiple(const Slit& slit, double diameter_mm, double friction, double steepness) {
  const double work = (1.0 + slit.turns_above) / slit.radius_mm * pull_out_share(slit.lean_rad, friction) *
                      grip_mm(slit.lean_rad, diameter_mm);
  return work / steepness;
}

double bend_multiple(double angle_rad, double friction) { return std::exp(friction * angle_rad); }

}  // namespace laywright
