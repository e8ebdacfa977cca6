// Figures in the unit system of a plan, with the other system beside them.
#pragma once

#include <string>
#include <string_view>

#include "plan/lay_plan.h"

namespace laywright {

// A figure as it stands on paper; `other` is empty where both systems use the same unit.
struct BothWays {
  std::string own, other;
};

// What a computed figure is; it decides the units.
enum class Amount {
  small_length,  // mm, in
  fiber_length,  // m, ft
  force,         // N, lbf
  torque,        // N m, lbf in
  guide_speed,   // mm/s, in/s
  line_speed,    // m/min, ft/min
  pressure,      // MPa, psi
  mass,          // kg, lb
  inertia,       // kg cm2, lb in2
};

// A plan whose barrel is given in in, ft, yd or mil is an inch plan.
[[nodiscard]] bool in_inches(const Plan& plan);

// `value` in the metric unit above. `decimals` of the metric figure; the other one has as many digits that count.
[[nodiscard]] BothWays both_ways(const Plan& plan, Amount amount, double value, int decimals);

// A quantity of the plan, as its owner wrote it, and in the other system; by its key path ("traverse.pitch").
// "not set" where the plan does not give it. Precondition: the key is that of a quantity.
[[nodiscard]] BothWays setting_both_ways(const Plan& plan, std::string_view path);

// One figure of an amount, without its unit: for tables and axes. `inch` picks the system.
[[nodiscard]] std::string figure_in(Amount amount, double value, int decimals, bool inch);
[[nodiscard]] const char* unit_in(Amount amount, bool inch);
[[nodiscard]] double value_in(Amount amount, double value, bool inch);

}  // namespace laywright
