// A finding in one sentence that a trainee understands: what, where, how large, what it will do later.
#pragma once

#include <string>

#include "measure/measurements.h"
#include "measure/occurrence.h"

namespace laywright {

// `finding` is complete but for its text; `cluster` is what it was made from.
[[nodiscard]] std::string sentence(const Plan& plan, const Build& build, const Finding& finding,
                                   const Cluster& cluster);

}  // namespace laywright
