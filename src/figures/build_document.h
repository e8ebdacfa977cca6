// A wind as the document "lay-build 1", to stand in a document of several. As text: json.h.
#pragma once

#include <nlohmann/json.hpp>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

[[nodiscard]] nlohmann::ordered_json build_document(const Plan& plan, const Build& build,
                                                    const Measurements& measurements, const TakeupRun& run,
                                                    const WindVerdict& verdict);

}  // namespace laywright
