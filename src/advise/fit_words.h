// A fit in words.
#pragma once

#include <string>

#include "advise/fit.h"

namespace laywright {

// A value of what was fitted, as exactly as it is known: "0.12 mm".
[[nodiscard]] std::string told_value(const Plan& plan, const Fitted& fitted, double value);

// What was fitted and differs from the plan beyond chance: "the pitch was 0.265 mm (0.263 mm to 0.267 mm) instead of 0.26 mm";
// empty where nothing does.
[[nodiscard]] std::string differences_words(const Plan& plan, const Fit& fit);

[[nodiscard]] std::string conclusion_of(const Plan& plan, const Fit& fit);

}  // namespace laywright
