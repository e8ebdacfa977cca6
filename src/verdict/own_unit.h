// A setting in the words and units of its owner.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "plan/lay_plan.h"

namespace laywright {

// In the unit in which the plan writes that key; `digits` that count, or all: "1.2 mm". Precondition: a key of the plan.
[[nodiscard]] std::string in_own_unit(const Plan& plan, std::string_view path, double value,
                                      std::optional<std::size_t> digits = {});

}  // namespace laywright
