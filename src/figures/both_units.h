// Figures in the unit system of a plan, with the other system beside them.
#pragma once

#include <string>
#include <string_view>

#include "base/quantity_text.h"
#include "plan/lay_plan.h"

namespace laywright {

// A figure as it stands on paper; `other` is empty where both systems use the same unit.
struct BothWays {
  std::string own, other;
};

// A plan whose barrel is given in in, ft, yd or mil is an inch plan.
[[nodiscard]] bool in_inches(const Plan& plan);

// `value` in the metric unit of the amount. `decimals` of the metric figure; the other one has as many digits that count.
[[nodiscard]] BothWays both_ways(const Plan& plan, Amount amount, double value, int decimals);

// A quantity of the plan, as its owner wrote it, and in the other system; by its key path ("traverse.pitch").
// "not set" where the plan does not give it. Precondition: the key is that of a quantity.
[[nodiscard]] BothWays setting_both_ways(const Plan& plan, std::string_view path);

}  // namespace laywright
