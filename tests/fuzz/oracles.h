// What must be true of every build and of everything that is measured on it, whatever the plan.
#pragma once

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright::fuzz {

// Nothing enters anything else, the length and the turns are the wind's, strokes follow each other, all is finite.
void require_build(const Plan& plan, const Build& build);

// All numbers are finite, no build is denser than hexagons, and every finding lies within the wind.
void require_measurements(const Plan& plan, const Build& build, const Measurements& measured);

}  // namespace laywright::fuzz
