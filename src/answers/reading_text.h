// Readings of a spool in words.
#pragma once

#include <string>

#include "advise/fit_model.h"

namespace laywright {

// A value of what was read, in its unit: "371.5" turns, "150.432 mm", "1,234.50 m"; or in inches and feet.
[[nodiscard]] std::string reading_text(const Observation& observation, double value, bool inch = false);

}  // namespace laywright
