// How thick a wind is while it grows.
#pragma once

#include "measure/measurements.h"

namespace laywright {

// Over the fiber, in the middle of the spool, mm, once so much of the fiber lies: with the layer on top by its share. Beyond the
// ends of the wind that of the end. `barrel_mm`: diameter of the bare barrel.
[[nodiscard]] double diameter_so_far(const Measurements& measurements, double barrel_mm, double length_mm);

}  // namespace laywright
