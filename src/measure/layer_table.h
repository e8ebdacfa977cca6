// One row of the layer table: a stroke, measured.
//
// - Mean diameter: over the angle, of the centre line.
// - Mean rise: the fiber's radius less the radius of the layer below at the same place, in d, averaged over the
//   angle of the whole layer. "At the same place" is at the same station on the straight line between the two
//   turns of the layer below that the fiber lies between; fiber beside no such pair (at the very flange, or
//   where the layer below ends) is left out.
// - Gap length: of the fiber that has, on its right, the next turn of the same layer more than the limit away,
//   with the gaps that the layer leaves at the flange (flange_reach.h).
// - Crossings: how often the fiber passes over a turn of the layer below, either way.
// - Bridged share: of the length, carried by nothing.
#pragma once

#include "measure/measurements.h"
#include "measure/stroke_view.h"

namespace laywright {

[[nodiscard]] LayerRow layer_row(const StrokeView& view);

}  // namespace laywright
