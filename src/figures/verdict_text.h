// A verdict, and the findings beside it, as text for a terminal.
#pragma once

#include <string>
#include <vector>

#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

// A table of what was weighed: figure, limit, margin, grade; then that it is one draw. Ends with a line feed.
[[nodiscard]] std::string checks_table(const Plan& plan, const Build& build, const WindVerdict& verdict);

// Findings that are told by their number alone, since they are small: "12 dropped turns in 260 places, 3 gaps in 280 places".
// Empty where there is none.
[[nodiscard]] std::string small_findings_words(const std::vector<Finding>& findings);

}  // namespace laywright
