// The picture of a study: maps of a grid over two keys, curves over one, or what tolerances do to the outer diameter.
#pragma once

#include "advise/study.h"
#include "paper/drawing.h"

namespace laywright {

// Precondition: a complete study.
[[nodiscard]] Drawing study_map(const Study& study);

// ColorBrewer 2.0, "YlGnBu" of nine classes, by C. Brewer (Apache 2.0), safe for the colour-blind; share 0 to 1, clamped.
[[nodiscard]] Color map_color(double share);

}  // namespace laywright
