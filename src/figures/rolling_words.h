// What a build was laid with of the fiber's rolling, in words and as JSON: the same figures in both, with what was
// assumed named in both.
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "plan/lay_plan.h"

namespace laywright {

// "twist adds 47.5 N to a pull of 0.5 N; longest stretch on a single turn 130 mm (modulus assumed: glass)".
[[nodiscard]] std::string rolling_words(const Plan& plan);

// rolls, twist_stiffness_N, tension_N, critical_length and slip_length (mm, on the barrel; null where it does not roll),
// slack_depth (mm, on the barrel), soft (laid turns near a slope give way), assumed: the keys of the plan in whose place a usual value stands.
[[nodiscard]] nlohmann::ordered_json rolling_block(const Plan& plan);

}  // namespace laywright
