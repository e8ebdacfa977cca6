// The way of a fiber that is drawn over an end of the spool: taut, over the turns that still lie there, to the flange's rim.
#pragma once

#include "lay/section.h"
#include "plan/lay_plan.h"

namespace laywright {

// By how much, rad, a fiber at (x, r) bends over turns that were laid before on its way to the rim on that side: the angle of
// the line by which it leaves its place, less that by which it comes to the rim; both in the axial section, from the axis. 0
// where nothing stands in between. `section` holds what was laid before it; `rim_mm` is the rim's radius.
[[nodiscard]] double bend_over_end(const Section& section, Side end, double rim_mm, double x_mm, double r_mm);

}  // namespace laywright
