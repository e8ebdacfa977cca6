// The whole spool in section, small, with its dimensions.
#pragma once

#include "measure/measurements.h"
#include "paper/drawing.h"
#include "paper/section_cut.h"

namespace laywright {

// Draws barrel, flanges, winding (its mean surface) and axis to scale in the middle of the box, and dimension lines
// for inside width, barrel, flange and greatest outer diameter around it.
void draw_spool_view(Drawing& drawing, const Box& box, const SectionCut& cut, const Measurements& measurements);

}  // namespace laywright
