// The `payoff` block of lay-build 1 and lay-payoff 1. Inside the folder only.
#pragma once

#include <nlohmann/json.hpp>

#include "lay/build.h"
#include "payoff/payoff.h"
#include "plan/lay_plan.h"

namespace laywright {

// Lengths mm but where the key has another unit, angles deg, forces in times the tension of winding. The keys are listed in
// DEVELOPERS.md.
[[nodiscard]] nlohmann::ordered_json payoff_block(const Plan& plan, const Build& build, const PayoffRun& run);

}  // namespace laywright
