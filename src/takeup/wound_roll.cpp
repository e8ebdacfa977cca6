#include "takeup/wound_roll.h"

#include <cmath>

namespace laywright {
namespace {

// Simpson's rule. The integrands are smooth; with g as large as 30 this many steps keep eight digits.
constexpr int steps = 400;

template <class Function>
double integral(double from, double to, Function&& f) {
  if (to <= from) return 0.0;
  const double h = (to - from) / steps;
  double sum = f(from) + f(to);
  for (int i = 1; i < steps; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * f(from + i * h);
  return sum * h / 3.0;
}

}  // namespace

double core_support(double stiffness_ratio, double hoop_over_core, double poisson) {
  return (stiffness_ratio - hoop_over_core - poisson) / (stiffness_ratio + hoop_over_core + poisson);
}

double roll_pressure(const WoundRoll& roll, double radius) {
  const double g = roll.stiffness_ratio, k = roll.core_support;
  const double here = 1.0 + k * std::pow(radius, -2.0 * g);
  if (here == 0.0) return 0.0;  // a free inner surface
  return integral(radius, roll.outer_radius, [&](double s) {
    return roll.wound_stress(s) / s * std::pow(radius / s, g - 1.0) * here / (1.0 + k * std::pow(s, -2.0 * g));
  });
}

double roll_hoop_stress(const WoundRoll& roll, double radius) {
  const double g = roll.stiffness_ratio, k = roll.core_support;
  // P + r P' of the same integrand; its lower limit gives the wound stress itself.
  const double here = g * (1.0 - k * std::pow(radius, -2.0 * g));
  return roll.wound_stress(radius) - integral(radius, roll.outer_radius, [&](double s) {
           return roll.wound_stress(s) / s * std::pow(radius / s, g - 1.0) * here /
                  (1.0 + k * std::pow(s, -2.0 * g));
         });
}

}  // namespace laywright
