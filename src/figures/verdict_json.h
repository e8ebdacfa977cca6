// The `verdict` block of lay-build 1. Inside the folder only: json.h is the way to it.
#pragma once

#include <nlohmann/json.hpp>

#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

// {"grade", "line", "reason", "first", "weighed_as", "draw", "checks": [{"name", "value", "limit", "margin", "grade", "unit",
// "at_least"}]}: `line` is the sentence that stands everywhere. A margin is negative beyond the limit.
[[nodiscard]] nlohmann::ordered_json verdict_block(const Plan& plan, const Build& build, const WindVerdict& verdict);

}  // namespace laywright
