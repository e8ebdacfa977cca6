// The result of a wind as one JSON document, format "lay-build 1".
#pragma once

#include <string>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

// UTF-8, indented, ends with a line feed. Lengths are mm unless the key says otherwise, angles deg. Numbers are
// finite; a value that does not apply, or is not finite, is null.
[[nodiscard]] std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements,
                                  const TakeupRun& run);

// The same with a verdict that was made elsewhere, as over several draws.
[[nodiscard]] std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements,
                                  const TakeupRun& run, const WindVerdict& verdict);

// The same with the machine's side worked out here. Precondition: build and measurements belong to the plan.
[[nodiscard]] std::string to_json(const Plan& plan, const Build& build, const Measurements& measurements);

}  // namespace laywright
