// What the steps of a wind change from a layer on.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

// Sets pitch and stops as far as the step gives them.
void apply(const WindStep& step, Traverse& traverse);

// The traverse as it is set in a layer (1 = the first; beyond the last one of a wind as in that), by all steps up to there.
[[nodiscard]] Traverse traverse_in_layer(const Plan& plan, int layer);

}  // namespace laywright
