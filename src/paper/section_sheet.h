// The axial section on an A4 page: the winding enlarged, its edges enlarged further where the fiber is fine, and
// the whole spool with its dimensions.
#pragma once

#include "lay/build.h"
#include "measure/measurements.h"
#include "paper/drawing.h"
#include "plan/lay_plan.h"

namespace laywright {

// The section at a spool angle (deg, any value; the nearest station is cut). Precondition: build and measurements
// belong to the plan.
[[nodiscard]] Drawing draw_section_sheet(const Plan& plan, const Build& build, const Measurements& measurements,
                                         double angle_deg);

}  // namespace laywright
