// Patterns of a crossed wind, in the still page.
#pragma once

#include <string>

#include "plan/lay_plan.h"

namespace laywright {

// A heading, a table of its rows, what each means, and the settings without ribbons; empty where no layers are crossed.
[[nodiscard]] std::string pattern_part(const Plan& plan);

}  // namespace laywright
