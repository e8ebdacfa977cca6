// How a wind comes off again, as text and as JSON.
#pragma once

#include <string>

#include "lay/build.h"
#include "payoff/payoff.h"
#include "plan/lay_plan.h"

namespace laywright {

[[nodiscard]] std::string payoff_text(const Plan& plan, const Build& build, const PayoffRun& run);

// One document, format "lay-payoff 1".
[[nodiscard]] std::string payoff_json(const Plan& plan, const Build& build, const PayoffRun& run);

}  // namespace laywright
