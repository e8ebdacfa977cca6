#include "measure/diameter_so_far.h"

#include <algorithm>
#include <cmath>

namespace laywright {

double diameter_so_far(const Measurements& measurements, double barrel_mm, double length_mm) {
  double laid = 0.0, under = barrel_mm;
  for (const LayerRow& layer : measurements.layers) {
    const double share = layer.length_mm > 0.0 ? (length_mm - laid) / layer.length_mm : 1.0;
    // A layer that was not finished leaves the middle lower than the one before.
    const double over = std::max(under, layer.outer_diameter_mm[1]);
    if (share < 1.0) return std::lerp(under, over, std::max(0.0, share));
    laid += layer.length_mm;
    under = over;
  }
  return under;
}

}  // namespace laywright
