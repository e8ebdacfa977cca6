// A dial from readings: two or more settings of it, and what was measured at each.
#pragma once

#include <vector>

#include "base/result.h"
#include "plan/dial.h"

namespace laywright {

struct Calibration {
  double per_unit = 0.0,
         at_zero = 0.0;       // of the line value = at_zero + per_unit x reading (inverse: over the reading)
  std::vector<double> off;    // of each point: what was measured less what the line has there
  double greatest_off = 0.0;  // by size
};

// The straight line through two points, or the one nearest to more in the least squares of their values (Legendre, Gauss).
// Errors, without file and key: fewer than two points, two with one reading, all of one value, a reading of 0 by the inverse law.
[[nodiscard]] Result<Calibration> calibrate(const std::vector<DialPoint>& points, DialLaw law);

}  // namespace laywright
