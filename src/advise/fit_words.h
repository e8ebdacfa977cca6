// A fit in words.
#pragma once

#include <string>

#include "advise/fit.h"

namespace laywright {

// A value of what was fitted, as exactly as it is known: "0.12 mm".
[[nodiscard]] std::string told_value(const Plan& plan, const Fitted& fitted, double value);

[[nodiscard]] std::string conclusion_of(const Plan& plan, const Fit& fit);

}  // namespace laywright
