// What is dialled, as a block of a JSON document. Inside the folder only.
#pragma once

#include <nlohmann/json.hpp>

#include "plan/lay_plan.h"

namespace laywright {

// A list of settings; null where the machine has neither dials nor a counter. What the counter shows stands in the block takeup.
[[nodiscard]] nlohmann::ordered_json dialled_block(const Plan& plan);

}  // namespace laywright
