// The lag of the lay point behind the guide: the free span is straight, so on a surface that holds the fiber
// the lay point x pursues the guide x_g, dx/ds = (x_g - x) / L (s = fiber length, L = free length; derived).
#pragma once

#include "lay/guide.h"

namespace laywright {

struct Lagged {
  double x = 0.0;      // where the lay point comes to
  double stays = 0.0;  // share of its old distance from the guide that is left: exp(-length / L)
};

// The lay point after the guide's piece of motion, exactly, on a surface of radius `radius`.
// Lengths mm; radius > 0; free_length >= 0 (at 0 the lay point is at the guide).
[[nodiscard]] Lagged lagged_behind(double x, const GuidePiece& guide, double radius, double free_length);

}  // namespace laywright
