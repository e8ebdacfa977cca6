// How finely a setting is worth moving on a machine whose dials go by steps.
#pragma once

#include <string_view>

#include "plan/lay_plan.h"

namespace laywright {

// The step by which advice would move a key, or where its dial goes by steps, the least whole number of those that is no less.
[[nodiscard]] double settable_step(const PlanDraft& draft, std::string_view path, double step);

}  // namespace laywright
