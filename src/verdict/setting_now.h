// Settings as they are at the end of a wind, and in the words and units of their owner.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// After all steps up to the last layer, mm.
[[nodiscard]] double pitch_now_mm(const Plan& plan, const Measurements& measurements);
[[nodiscard]] double stop_now_mm(const Plan& plan, const Measurements& measurements, Side side);

// In the unit in which the plan writes that key; `digits` that count, or all: "1.2 mm". Precondition: a key of the plan.
[[nodiscard]] std::string in_own_unit(const Plan& plan, std::string_view path, double value,
                                      std::optional<std::size_t> digits = {});

}  // namespace laywright
