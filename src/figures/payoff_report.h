// How a wind comes off again, as text and as JSON.
#pragma once

#include <cstddef>
#include <string>

#include "lay/build.h"
#include "payoff/payoff.h"
#include "plan/lay_plan.h"

namespace laywright {

[[nodiscard]] std::string payoff_text(const Plan& plan, const Build& build, const PayoffRun& run);

// "Payoff (2 catches: 1 grave, 1 worth a look)" and what it says, for a list of findings: the hardest `most` of its catches.
[[nodiscard]] std::string payoff_section(const Plan& plan, const Build& build, const PayoffRun& run,
                                         std::size_t most);

// One document, format "lay-payoff 1".
[[nodiscard]] std::string payoff_json(const Plan& plan, const Build& build, const PayoffRun& run);

}  // namespace laywright
