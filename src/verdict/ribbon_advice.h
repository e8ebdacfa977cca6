// What to set against a ribbon: a safe setting of those layers, as laywright pattern tells it.
#pragma once

#include <string>

#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// An instruction without its stop. Of the layers in which the highest ribbon begins: their finer safe pitch, else another one,
// else a stop; where a thousandth of a millimetre is too coarse for any of them, what is to be reached.
[[nodiscard]] std::string against_ribbon(const Plan& plan, const Measurements& measurements);

}  // namespace laywright
