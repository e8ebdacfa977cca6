// The picture of a cut's face as it is drawn: what lies between fibers is dark, what lies above the wind is left out.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/coordinates.h"

namespace laywright {

// `along`: how far apart, in pixels, neighbours in radius are (a row, or 1 when radii run along the rows); there are
// `depth` of them from each of the first pixels. Colours come out multiplied by alpha, which is 255 up to the
// outermost fiber and 0 above it.
[[nodiscard]] std::vector<Rgba> fill_voids(const std::vector<Rgba>& colour, std::size_t depth, std::size_t along,
                                           std::size_t lines, std::size_t between_lines);

}  // namespace laywright
