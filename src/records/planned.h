// What the program expected of a wind, to be kept with it.
#pragma once

#include <string>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "records/spool_record.h"

namespace laywright {

// A record without number, date and entries: the plan's text, made to stand alone, and the figures of its build layer by
// layer. Spool, machine and order are what the plan says of them. Preconditions: the plan was read from the text, and
// build and measurements belong to it.
[[nodiscard]] SpoolRecord planned_record(const Plan& plan, std::string_view text, const LaySettings& settings,
                                         const Build& build, const Measurements& measurements);

}  // namespace laywright
