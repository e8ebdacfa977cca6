// The ribbons near a winding ratio: what a curve of the ratio runs into, or passes.
#pragma once

#include <vector>

#include "pattern/pattern.h"

namespace laywright {

struct RibbonBand {
  int starts = 1;
  long turns = 0;           // in lowest terms
  double ratio = 0.0;       // turns / starts: strand on strand
  double half_width = 0.0;  // the ratio may be off by less than that, and is a ribbon still
};

// All whose middle lies within `reach` of the cycle's ratio, in the order of it. A strand is displaced by p (a - b n) along the
// axis, so the half width is  d / (b p cos(angle)),  at the cycle's own pitch (derived). Empty for a close wind.
[[nodiscard]] std::vector<RibbonBand> ribbon_bands(const GuideCycle& cycle, double d_mm, double diameter_mm,
                                                   double reach);

}  // namespace laywright
