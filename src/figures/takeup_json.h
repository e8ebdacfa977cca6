// The `takeup` block of lay-build 1. Inside the folder only: json.h is the way to it.
#pragma once

#include <nlohmann/json.hpp>

#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"

namespace laywright {

// Lengths mm, angles deg, anything else with its unit in the key; what does not apply is null. The keys are listed in
// DEVELOPERS.md.
[[nodiscard]] nlohmann::ordered_json takeup_block(const Plan& plan, const TakeupRun& run);

}  // namespace laywright
